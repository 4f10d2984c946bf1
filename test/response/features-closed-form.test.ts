import { describe, expect, test } from "vitest";
import { powerDecibels, SILENCE_DB } from "../../src/decibels.ts";
import { exactCurve } from "../../src/response/features/power-curve.ts";
import { findFeatures } from "../../src/response/features.ts";

const featuresOf = (powerAt: (frequencyHz: number) => number) => findFeatures(exactCurve(powerAt));

const [R, L, C] = [6000, 2.4, 610e-12];

/** |H|² of EMF → R → L → C: 1 / ((1 − ω²LC)² + (ωRC)²). */
function seriesResonance(frequencyHz: number): number {
  const w = 2 * Math.PI * frequencyHz;
  return 1 / ((1 - w * w * L * C) ** 2 + (w * R * C) ** 2);
}

/** The frequencies where |H|² has a value: a quadratic in ω². */
function highestFrequencyWith(power: number): number {
  const a = (L * C) ** 2;
  const b = (R * C) ** 2 - 2 * L * C;
  const c = 1 - 1 / power;
  return Math.sqrt((-b + Math.sqrt(b * b - 4 * a * c)) / (2 * a)) / (2 * Math.PI);
}

describe("peak and cutoff of a series resonance", () => {
  const { peak, cutoff } = featuresOf(seriesResonance);

  test("the peak stands at √(1/(LC) − R²/(2L²)), as high as the curve is there over 200 Hz", () => {
    const frequency = Math.sqrt(1 / (L * C) - (R * R) / (2 * L * L)) / (2 * Math.PI);
    expect(peak!.frequency / frequency).toBeCloseTo(1, 5);
    const level = 10 * Math.log10(seriesResonance(frequency) / seriesResonance(200));
    expect(peak!.level).toBeCloseTo(level, 3);
  });

  test("the cutoff is where the curve falls 3 dB under its level at 200 Hz", () => {
    expect(cutoff! / highestFrequencyWith(seriesResonance(200) * 10 ** -0.3)).toBeCloseTo(1, 5);
  });
});

describe("peak and cutoff of other curves", () => {
  test("a curve that only falls has no peak", () => {
    const lowPass = (frequencyHz: number) => 1 / (1 + (frequencyHz / 1000) ** 2);
    const { peak, cutoff } = featuresOf(lowPass);
    expect(peak).toBeNull();
    const target = lowPass(200) * 10 ** -0.3;
    expect(cutoff).toBeCloseTo(1000 * Math.sqrt(1 / target - 1), 2);
  });

  test("a flat curve has neither", () => {
    expect(featuresOf(() => 0.5)).toEqual({ peak: null, cutoff: null });
  });

  test("silence has neither, and its level is the floor", () => {
    expect(featuresOf(() => 0)).toEqual({ peak: null, cutoff: null });
    expect(powerDecibels(0)).toBe(SILENCE_DB);
  });

  test("the higher of two resonances is told", () => {
    const bump = (frequencyHz: number, at: number, height: number) =>
      height * Math.exp(-((Math.log2(frequencyHz / at) / 0.3) ** 2));
    const { peak } = featuresOf((frequencyHz) => 1 + bump(frequencyHz, 800, 0.5) + bump(frequencyHz, 4000, 0.8));
    expect(peak!.frequency / 4000).toBeCloseTo(1, 2);
  });
});
