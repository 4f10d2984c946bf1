import { expect, it } from "vitest";
import { Controls } from "../../../src/build-file/settings.ts";
import { readExciterTake, readGain, readJackTake } from "../../../src/examine/takes/read-take.ts";
import { measuringSignal } from "../../../src/measure/signal/measuring-signal.ts";
import { thoroughly } from "../../effort.ts";
import { trialGuards } from "../trial-guards.ts";

const RATE_HZ = 48_000;
const SIGNAL = measuringSignal("multitone", RATE_HZ);
const SETTINGS = new Controls(trialGuards[0]!.build).atRest;

const recorded = (path: string, gain: number) => ({
  path,
  sampleRateHz: RATE_HZ,
  channels: [SIGNAL, SIGNAL.map((each) => gain * each)],
});

/** The gain of the jack's channel that makes it a share of what is played, told from none at all. */
it.each([
  [0, "has nothing but zeros in channel 2"],
  [0.01, "has the channel behind the resistor 0.010 times as strong"],
])("refuses a run of both channels on one point where one was not on it: %d of the other", (gain, message) => {
  expect(() => readGain("multitone", recorded("gain", gain), [0, 1])).toThrow(
    expect.objectContaining({ faults: [{ path: "gain", message: expect.stringContaining(message) }] }),
  );
});

thoroughly("takes what two knobs differ by as the gain, and a jack that is all but silent as shorted", async () => {
  const { gain } = readGain("multitone", recorded("gain", 0.5), [0, 1]);
  for (const { re, im } of gain) expect(Math.hypot(re - 0.5, im)).toBeLessThan(1e-4);
  const { take } = readJackTake("multitone", recorded("take1", 1e-4), [0, 1], SETTINGS);
  expect([...take.re, ...take.im].every((each) => each === 0)).toBe(true);
});

it("refuses a take with a muted channel", () => {
  const muted = expect.objectContaining({
    faults: [{ path: "take1", message: expect.stringContaining("channel 2; expected a recording of both inputs") }],
  });
  expect(() => readJackTake("multitone", recorded("take1", 0), [0, 1], SETTINGS)).toThrow(muted);
  const through = { pickup: "bridge", coil: "coil" };
  expect(() => readExciterTake("multitone", recorded("take1", 0), [0, 1], SETTINGS, through)).toThrow(muted);
});
