import { expect, it } from "vitest";
import { guardWith, peakOver80Hz } from "./one-pickup.ts";

// 500 kΩ pots for a humbucker, and a resistor from the single coil's hot to ground that makes them look like 250 kΩ to it: 259 kΩ
// (220 k and 39 k in series) where a drawing asked for 270 kΩ. Peaks computed from the circuit by other means.
const loaded = (resistance: string) =>
  guardWith({
    volume: "500k",
    tone: "500k",
    across: [{ name: "load", part: { kind: "resistor", resistance }, lugs: ["pickup.hot", "volume.case"] }],
  });

it.each([
  ["500k pots alone", guardWith({ volume: "500k", tone: "500k" }), 8.1],
  ["500k pots with 259k across the coil", loaded("259k"), 4.4],
  ["true 250k pots", guardWith(), 4.3],
])("a single coil on %s peaks %#d dB up", (_name, guard, decibels) => {
  expect(Math.abs(peakOver80Hz(guard)!.level - decibels)).toBeLessThan(0.3);
});

it("the treble load comes to 127.2k, and to 129.8k with 270k", () => {
  const parallel = (...ohms: number[]) => 1 / ohms.reduce((sum, value) => sum + 1 / value, 0);
  expect(parallel(500e3, 500e3, 259e3)).toBeCloseTo(127.2e3, -2);
  expect(parallel(500e3, 500e3, 270e3)).toBeCloseTo(129.8e3, -2);
  // The same two loads, as one pot each would make them, give the same peaks.
  const alike = guardWith({ volume: "254.4k", tone: "254.4k" });
  expect(peakOver80Hz(loaded("259k"))!.level).toBeCloseTo(peakOver80Hz(alike)!.level, 1);
});
