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

// 500 k ∥ 500 k ∥ 259 k is 127.2 kΩ, and with 270 k it is 129.8 kΩ: what two pots of twice that make.
it.each([
  ["259k", "254.4k"],
  ["270k", "259.6k"],
])("500k pots with %s load the treble as two pots of %s do", (resistance, pot) => {
  const alike = guardWith({ volume: pot, tone: pot });
  expect(peakOver80Hz(loaded(resistance))!.level).toBeCloseTo(peakOver80Hz(alike)!.level, 1);
});
