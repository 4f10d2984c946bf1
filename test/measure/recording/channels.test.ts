import { expect, it } from "vitest";
import { readBoth } from "../../../src/measure/recording/channels.ts";
import { measuringSignal } from "../../../src/measure/signal/measuring-signal.ts";
import { recorded } from "../simulated-recording.ts";

const RATE_HZ = 48_000;
const signal = measuringSignal("sweep", RATE_HZ);
const before = recorded(signal, RATE_HZ, { noise: 1e-5 });
const both = (behind: Float32Array) =>
  readBoth("sweep", { path: "measured", sampleRateHz: RATE_HZ, channels: [before, behind] }, [0, 1]);

it("one input recorded to both channels is named", () => {
  expect(() => both(before)).toThrow(/^measured: the recording has the same in both channels.*save in stereo$/);
});

it("a sweep that a capacitor behind a large resistor evens out is a sweep still", () => {
  // 47 nF behind 470 kΩ.
  const corner = 1 / (2 * Math.PI * 470e3 * 47e-9);
  const transfer = (hz: number): [number, number] => {
    const x = hz / corner;
    return [1 / (1 + x * x), -x / (1 + x * x)];
  };
  const [, { frequenciesHz, re, im }] = both(recorded(signal, RATE_HZ, { transfer, noise: 1e-5, seed: 3 }));
  const at = frequenciesHz.findIndex((hz) => hz >= 100);
  expect(Math.hypot(re[at]!, im[at]!)).toBeCloseTo(Math.hypot(...transfer(frequenciesHz[at]!)), 3);
});
