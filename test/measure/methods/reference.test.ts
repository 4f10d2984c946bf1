import { describe, expect, it } from "vitest";
import { requireReference } from "../../../src/measure/methods/reference.ts";
import type { Transfer } from "../../../src/measure/recording/passes.ts";
import { TONES_HZ } from "../../../src/measure/signal/multitone.ts";
import { type Complex, heardUnder, INPUT, LOAD } from "../simulated-pickup.ts";

const read = (through: (hz: number) => Complex, sd = 1e-4): Transfer => {
  const points = TONES_HZ.map(through);
  return {
    frequenciesHz: Float64Array.from(TONES_HZ),
    re: Float64Array.from(points, ([re]) => re),
    im: Float64Array.from(points, ([, im]) => im),
    sd: Float64Array.from(TONES_HZ, () => sd),
  };
};

/** An output over an input, coupled by 20 Hz and bandlimited by its filters, 1 dB down at 14 kHz. */
const itself = read((hz) => {
  const [low, high] = [20 / hz, hz / 28_000];
  const size = 0.4 / Math.hypot(1, low) / Math.hypot(1, high);
  const angle = Math.atan(low) - Math.atan(high);
  return [size * Math.cos(angle), size * Math.sin(angle)];
});

const PICKUPS: readonly (readonly [string, Transfer])[] = [
  ["nothing but an input", read(heardUnder(INPUT))],
  ["200 kΩ and 470 pF", read(heardUnder(INPUT, LOAD))],
  ["10 nF", read(heardUnder(INPUT, { resistance: Number.POSITIVE_INFINITY, capacitance: 10e-9 }))],
  ["a volume control turned low", read(heardUnder(INPUT, { resistance: 10e3, capacitance: 0 }))],
];

describe("the channel that has the signal itself", () => {
  it.each(PICKUPS)("is told from that of a pickup under %s", (_, pickup) => {
    expect(() => requireReference(itself, pickup, "first", "loaded")).not.toThrow();
    expect(() => requireReference(pickup, itself, "first", "loaded")).toThrow(
      /^loaded: the first channel, said to be the signal itself, is uneven by \d+\.\d dB .* Say reference: second/,
    );
    expect(() => requireReference(pickup, itself, "second", "loaded")).toThrow(/Say reference: first/);
  });

  it("is left as said where a channel is too faint to tell", () => {
    const [, pickup] = PICKUPS[0]!;
    expect(() =>
      requireReference(
        pickup,
        read(() => [1e-5, 0]),
        "first",
        "loaded",
      ),
    ).not.toThrow();
  });
});
