import { expect, it } from "vitest";
import { parseSettings } from "../../src/build-file/settings.ts";
import { compare } from "../../src/choice/compare/compare.ts";
import { flatDrive } from "../../src/choice/drive.ts";
import { HUMBUCKER } from "./bench-guard.ts";
import { guardWith, level, peakOver80Hz } from "./one-pickup.ts";

// A bridge humbucker that sounds muddy on 250 kΩ pots. Figures computed from the circuit by other means, the peaks with
// ngspice too; they are given to 0.1 dB and 10 Hz.
const withPots = (volume: string, tone: string) => guardWith({ pickup: HUMBUCKER, volume, tone });
const dark = withPots("250k", "250k");
const bright = withPots("500k", "500k");

it.each([
  ["250k", "250k", 2.4, 2510],
  ["500k", "500k", 6.2, 2840],
  ["500k", "250k", 4.0, 2700],
])("a humbucker on a %s volume and a %s tone peaks %f dB up at %f Hz", (volume, tone, decibels, hertz) => {
  const peak = peakOver80Hz(withPots(volume, tone))!;
  expect(Math.abs(peak.level - decibels)).toBeLessThan(0.3);
  expect(Math.abs(peak.frequency / hertz - 1)).toBeLessThan(0.02);
});

it("a 300k volume with a 100k tone leaves no peak at all", () => {
  const peak = peakOver80Hz(withPots("300k", "100k"));
  expect(peak?.level ?? 0).toBeLessThan(0.05);
});

it("500k pots are 4.4 dB louder at 3 kHz, 1.2 dB at 5 kHz and the same at 80 Hz", () => {
  const gain = (hertz: number) => level(bright, {}, hertz) - level(dark, {}, hertz);
  expect(Math.abs(gain(3000) - 4.4)).toBeLessThan(0.3);
  expect(Math.abs(gain(5000) - 1.2)).toBeLessThan(0.3);
  expect(gain(80)).toBeGreaterThan(0);
  expect(gain(80)).toBeLessThan(0.3);
});

it("the comparison calls the change plain, places it at the peak, and says the pots' tolerance cannot do it", () => {
  const side = (guard: typeof dark) => ({
    guard,
    drive: flatDrive(),
    settings: [parseSettings(guard.controls, {})],
  });
  const { rows, verdict } = compare(side(dark), side(bright), { draws: 400 });
  const [row] = rows;
  expect(row!.largest.frequency).toBeGreaterThan(2400);
  expect(row!.largest.frequency).toBeLessThan(3400);
  expect(row!.largest.difference).toBeGreaterThan(2);
  expect(row!.peakShift!.shiftHz).toBeGreaterThan(280);
  expect(row!.peakShift!.shiftHz).toBeLessThan(380);
  expect(row!.peakShift!.extrapolated).toBe(true);
  expect(row!.tolerance!.exceeded).toBe(true);
  expect(verdict).toContain("more than tolerance");
});
