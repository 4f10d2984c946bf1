import { describe, expect, test } from "vitest";
import {
  bentTime,
  bentUp,
  highestSemitones,
  type PitchCurve,
  slidOver,
  steppedTo,
  vibrato,
} from "../../src/strings/pitch-curve.ts";

/** ∫ 2^(s/12) dt by a sum over a fine grid. */
function summed(curve: PitchCurve, seconds: number): number {
  const at = (time: number) => {
    const after = curve.findIndex(([when]) => when > time);
    if (after === 0) return curve[0]![1];
    if (after < 0) return curve.at(-1)![1];
    const [[t0, s0], [t1, s1]] = [curve[after - 1]!, curve[after]!];
    return s0 + ((time - t0) / (t1 - t0)) * (s1 - s0);
  };
  const step = seconds / 20_000;
  return Array.from({ length: 20_000 }, (_, i) => 2 ** (at((i + 0.5) * step) / 12) * step).reduce((a, b) => a + b, 0);
}

const CURVES: readonly (readonly [string, PitchCurve])[] = [
  ["a bend", bentUp(2, 0.2, 0.6)],
  ["vibrato", vibrato({ semitones: 0.4, cyclesPerSecond: 5.5, fromSeconds: 0.3, toSeconds: 1.6 })],
  [
    "a bend and vibrato on it",
    [...bentUp(2, 0.1, 0.3), ...vibrato({ semitones: 0.5, cyclesPerSecond: 5, fromSeconds: 0.5, toSeconds: 1.5 }, 2)],
  ],
  ["a hammer and a pull", steppedTo([0.2, 2], [0.5, -2])],
  ["a slide", slidOver(4, 0.2, 0.5)],
  ["a pitch from the first moment on", [[0, 1]]],
];

describe("the time that a bent string's phase has run", () => {
  test.each(CURVES)("is the integral of the pitch ratio: %s", (_name, curve) => {
    const bent = bentTime(curve);
    for (const seconds of [0, 0.15, 0.21, 0.55, 0.9, 2]) {
      expect(bent(seconds)).toBeCloseTo(summed(curve, Math.max(seconds, 1e-9)), 6);
    }
  });

  test("is the time itself under a curve that stays at nothing", () => {
    expect(bentTime([[0.5, 0]])(1.25)).toBeCloseTo(1.25, 12);
  });
});

describe("a curve", () => {
  test("of vibrato rises to what it is asked for, and comes back whole cycles later", () => {
    const curve = vibrato({ semitones: 0.4, cyclesPerSecond: 5, fromSeconds: 0.3, toSeconds: 1.25 }, 2);
    expect(highestSemitones(curve)).toBeCloseTo(2.4, 9);
    expect(Math.min(...curve.map(([, semitones]) => semitones))).toBeCloseTo(2, 9);
    expect(curve[0]).toEqual([0.3, 2]);
    expect(curve.at(-1)![0]).toBeCloseTo(0.3 + 4 / 5, 9);
    expect(curve.at(-1)![1]).toBeCloseTo(2, 9);
  });

  test("of a slide stands on every fret on its way", () => {
    const tops = slidOver(3, 0.2, 0.5, 1).map(([, semitones]) => semitones);
    expect(tops).toEqual([1, 2, 2, 3, 3, 4]);
  });

  test.each(CURVES)("never goes back in time: %s", (_name, curve) => {
    for (let i = 1; i < curve.length; i += 1) expect(curve[i]![0]).toBeGreaterThanOrEqual(curve[i - 1]![0]);
  });
});
