import { expect, test } from "vitest";
import { curveIn, jackOhms, oneOn, peakOver80, SINGLE } from "./bench-guard.ts";

// Peaks computed outside the project (see bench-guard.ts); the jack reads 6 k ∥ 250 k, 5859 Ω.
const normal = oneOn(SINGLE, "250k", "250k");
const noLoad = oneOn(SINGLE, "250k", "250k", { tone: { noLoad: true } });

test.each([
  ["an ordinary tone at 10", normal, 10, 4.3, 3800],
  ["a no-load tone at 10", noLoad, 10, 8.1, 4050],
  ["a no-load tone at 9.9", noLoad, 9.9, 4.3, 3800],
  ["500 kΩ pots", oneOn(SINGLE, "500k", "500k"), 10, 8.1, 4050],
] as const)("%s peaks as it should", (_, build, tone, level, frequency) => {
  const peak = peakOver80(build, { tone })!;
  expect(Math.abs(peak.level - level)).toBeLessThan(0.3);
  expect(Math.abs(peak.frequency / frequency - 1)).toBeLessThan(0.02);
});

test("the meter at the jack reads the same in all of them", () => {
  for (const [build, tone] of [
    [normal, 10],
    [noLoad, 10],
    [noLoad, 5],
    [normal, 0],
  ] as const)
    expect(jackOhms(build, { tone })! / 1000).toBeCloseTo(5.859, 3);
});

test("at 10 the cap's value has no effect", () => {
  const frequencies = [80, 500, 2000, 4000, 8000];
  const [small, large] = ["1n", "100n"].map((cap) => oneOn(SINGLE, "250k", "250k", { tone: { noLoad: true, cap } }));
  const [a, b] = [small!, large!].map((build) => curveIn(build, frequencies).magnitude);
  for (const [i, level] of a!.entries()) expect(level).toBeCloseTo(b![i]!, 9);
});
