import { describe, expect, test } from "vitest";
import { jackOhms, levelAt, oneOn, SINGLE } from "./bench-guard.ts";

// Treble bleeds in common use, no source.
const BLEEDS: Readonly<Record<string, object | undefined>> = {
  none: undefined,
  "680p": { capacitance: "680p" },
  "680p ∥ 150k": { capacitance: "680p", parallel: "150k" },
  "1n ∥ 150k": { capacitance: "1n", parallel: "150k" },
  "1n + 100k in series": { capacitance: "1n", series: "100k" },
};
const FREQUENCIES = [100, 1000, 3000, 5000];

const guard = (name: string) =>
  oneOn(SINGLE, "250k", "250k", BLEEDS[name] ? { plan: { trebleBleed: BLEEDS[name] } } : {});
const levels = (name: string, volume: number) =>
  FREQUENCIES.map((frequency) => levelAt(guard(name), frequency, { volume }));

function expectClose(found: number[], wanted: number[]): void {
  for (const [i, level] of wanted.entries())
    expect(Math.abs(found[i]! - level), `${FREQUENCIES[i]} Hz`).toBeLessThan(0.15);
}

// Computed outside the project (see bench-guard.ts).
describe("levels at 100 Hz, 1, 3 and 5 kHz with the volume turned down", () => {
  test.each<[number, string, number[]]>([
    [5, "none", [-6.9, -7.0, -7.6, -9.4]],
    [5, "680p", [-6.9, -6.4, -3.7, -2.1]],
    [5, "680p ∥ 150k", [-4.6, -4.5, -3.1, -2.7]],
    [5, "1n ∥ 150k", [-4.6, -4.3, -2.2, -1.8]],
    [5, "1n + 100k in series", [-6.9, -5.4, -4.2, -5.7]],
    [1, "none", [-20.6, -20.6, -20.6, -20.7]],
    [1, "680p", [-20.5, -17.4, -8.9, -9.1]],
    [1, "680p ∥ 150k", [-14.0, -13.3, -9.8, -10.3]],
    [1, "1n ∥ 150k", [-14.0, -12.6, -7.9, -9.9]],
    [1, "1n + 100k in series", [-20.4, -15.3, -13.1, -14.5]],
  ])("electrical %d tenths, %s", (volume, name, wanted) => {
    expectClose(levels(name, volume), wanted);
  });
});

test.each(Object.keys(BLEEDS))("at volume 10 the bleed %s changes nothing", (name) => {
  expectClose(levels(name, 10), [-0.4, -0.1, 2.9, 1.1]);
});

// (6 k + 125 k) ∥ 125 k is 64.0 kΩ, and (6 k + 125 k ∥ 150 k) ∥ 125 k is 46.6 kΩ.
test("only the parallel resistor shows on the meter: 46.6 kΩ for 64.0 kΩ at electrical 0.5", () => {
  const reading = (name: string) => jackOhms(guard(name), { volume: 5 })! / 1000;
  expect(reading("none")).toBeCloseTo(64.0, 1);
  expect(reading("680p")).toBeCloseTo(64.0, 1);
  expect(reading("1n + 100k in series")).toBeCloseTo(64.0, 1);
  expect(reading("680p ∥ 150k")).toBeCloseTo(46.6, 1);
});
