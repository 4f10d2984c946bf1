import { describe, expect, it } from "vitest";
import { type Choices, guardWith, levels } from "./one-pickup.ts";

// Treble bleeds across a 250 kΩ volume, levels at 100 Hz, 1, 3 and 5 kHz; computed from the circuit by other means, to 0.1 dB.
const HERTZ = [100, 1000, 3000, 5000];
const cap = (capacitance: string, lugs: [string, string]) => ({
  name: "bleed",
  part: { kind: "cap", capacitance },
  lugs,
});
const resistor = (resistance: string, lugs: [string, string]) => ({
  name: "bleedR",
  part: { kind: "resistor", resistance },
  lugs,
});
const OVER: [string, string] = ["volume.3", "volume.2"];

const bleeds: Record<string, Choices> = {
  none: {},
  "680p": { across: [cap("680p", OVER)] },
  "680p with 150k in parallel": { across: [cap("680p", OVER), resistor("150k", OVER)] },
  "1n with 150k in parallel": { across: [cap("1n", OVER), resistor("150k", OVER)] },
  "1n with 100k in series": {
    across: [cap("1n", ["volume.3", "bleedR.a"]), resistor("100k", ["bleed.b", "volume.2"])],
  },
};

const table: [string, number, number[]][] = [
  ["none", 5, [-6.9, -7.0, -7.6, -9.4]],
  ["680p", 5, [-6.9, -6.4, -3.7, -2.1]],
  ["680p with 150k in parallel", 5, [-4.6, -4.5, -3.1, -2.7]],
  ["1n with 150k in parallel", 5, [-4.6, -4.3, -2.2, -1.8]],
  ["1n with 100k in series", 5, [-6.9, -5.4, -4.2, -5.7]],
  ["none", 1, [-20.6, -20.6, -20.6, -20.7]],
  ["680p", 1, [-20.5, -17.4, -8.9, -9.1]],
  ["680p with 150k in parallel", 1, [-14.0, -13.3, -9.8, -10.3]],
  ["1n with 150k in parallel", 1, [-14.0, -12.6, -7.9, -9.9]],
  ["1n with 100k in series", 1, [-20.4, -15.3, -13.1, -14.5]],
];

describe("treble bleeds", () => {
  it.each(table)("%s at a tenth of dial %d gives the levels of the table", (name, volume, wanted) => {
    const actual = levels(guardWith(bleeds[name]!), { volume }, HERTZ);
    for (const [i, decibels] of wanted.entries()) expect(Math.abs(actual[i]! - decibels)).toBeLessThan(0.3);
  });

  it.each(Object.keys(bleeds))("%s changes nothing at volume 10", (name) => {
    const actual = levels(guardWith(bleeds[name]!), { volume: 10 }, HERTZ);
    for (const [i, decibels] of [-0.4, -0.1, 2.9, 1.1].entries())
      expect(Math.abs(actual[i]! - decibels)).toBeLessThan(0.3);
  });
});
