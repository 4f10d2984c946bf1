import { expect, it } from "vitest";
import { guardWith, level, peakOver80Hz } from "./one-pickup.ts";

// A tone pot whose track is cut at the 10 end. Peaks computed from the circuit by other means.
const plain = guardWith();
const noLoad = guardWith({ noLoad: true });

it.each([
  ["a usual tone at 10", plain, 10, 4.3, 3800],
  ["a no-load tone at 10", noLoad, 10, 8.1, 4050],
  ["a no-load tone at 9.9", noLoad, 9.9, 4.3, 3800],
  ["usual 500k pots at 10", guardWith({ volume: "500k", tone: "500k" }), 10, 8.1, 4050],
])("%s lets the single coil peak as published", (_name, guard, tone, decibels, hertz) => {
  const peak = peakOver80Hz(guard, { tone })!;
  expect(Math.abs(peak.level - decibels)).toBeLessThan(0.3);
  expect(Math.abs(peak.frequency / hertz - 1)).toBeLessThan(0.02);
});

it("the cap's value has no effect at 10 once the track is cut", () => {
  const other = guardWith({ noLoad: true, cap: "100n" });
  for (const hertz of [80, 1000, 4000, 12_000])
    expect(level(other, {}, hertz)).toBeCloseTo(level(noLoad, {}, hertz), 9);
});
