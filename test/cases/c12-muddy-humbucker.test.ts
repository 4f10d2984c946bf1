import { expect, test } from "vitest";
import { curveIn, HUMBUCKER, levelAt, oneOn, peakOver80 } from "./bench-guard.ts";

// Peaks and gains computed outside the project (see bench-guard.ts); the pots are those in common use, no source.
test.each([
  ["250k", "250k", 2.4, 2510],
  ["500k", "500k", 6.2, 2840],
  ["500k", "250k", 4.0, 2700],
] as const)("a humbucker on a %s volume and a %s tone peaks by %d dB at %d Hz", (volume, tone, level, frequency) => {
  const peak = peakOver80(oneOn(HUMBUCKER, volume, tone))!;
  expect(Math.abs(peak.level - level)).toBeLessThan(0.3);
  expect(Math.abs(peak.frequency / frequency - 1)).toBeLessThan(0.02);
});

test("500 kΩ pots are 4.4 dB louder at 3 kHz, 1.2 dB at 5 kHz and under 0.3 dB at 80 Hz", () => {
  const [low, high] = [oneOn(HUMBUCKER, "250k", "250k"), oneOn(HUMBUCKER, "500k", "500k")];
  const gain = (frequency: number) => levelAt(high, frequency) - levelAt(low, frequency);
  expect(gain(3000)).toBeCloseTo(4.4, 1);
  expect(gain(5000)).toBeCloseTo(1.2, 1);
  expect(gain(80)).toBeGreaterThan(0);
  expect(gain(80)).toBeLessThan(0.3);
});

test("a 300 kΩ volume with a 100 kΩ tone leaves no peak at all", () => {
  const frequencies = Array.from({ length: 200 }, (_, i) => 80 * 1.03 ** i);
  const { magnitude } = curveIn(oneOn(HUMBUCKER, "300k", "100k"), frequencies);
  expect(Math.max(...magnitude)).toBe(magnitude[0]);
});
