import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { loudnessLu } from "../../../src/choice/band-energies.ts";
import { levelMatchedDifference } from "../../../src/choice/compare/difference.ts";
import { peakShift } from "../../../src/choice/compare/resonance-jnd.ts";
import { audibility } from "../../../src/choice/compare/verdict.ts";
import { silenceWords } from "../../../src/choice/compare/words/row-words.ts";
import { SLICES, SLICES_PER_BAND } from "../../../src/choice/slices.ts";

const count = SLICES.frequenciesHz.length;
const energies = fc
  .array(fc.double({ min: 1e-6, max: 1, noNaN: true }), { minLength: count, maxLength: count })
  .map((values) => Float64Array.from(values));

describe("a level-matched difference", () => {
  it("of a sound and the same sound louder is the gain in LU, and nothing in any band", () => {
    fc.assert(
      fc.property(energies, fc.double({ min: -40, max: 40, noNaN: true }), (sound, gainDb) => {
        const louder = sound.map((energy) => energy * 10 ** (gainDb / 10));
        const difference = levelMatchedDifference(sound, louder);
        expect(difference.loudnessLu).toBeCloseTo(gainDb, 9);
        for (const db of difference.perBandDb) expect(Math.abs(db)).toBeLessThan(1e-9);
      }),
      { numRuns: 50 },
    );
  });

  it("turns its sign where the two change places", () => {
    fc.assert(
      fc.property(energies, energies, (a, b) => {
        const [there, back] = [levelMatchedDifference(a, b), levelMatchedDifference(b, a)];
        expect(there.loudnessLu).toBeCloseTo(-back.loudnessLu, 9);
        for (const [band, db] of there.perBandDb.entries()) expect(db).toBeCloseTo(-back.perBandDb[band]!, 9);
        expect(there.rmsDb).toBeCloseTo(back.rmsDb, 9);
      }),
      { numRuns: 50 },
    );
  });

  it("is what one band gained, less the loudness it brought", () => {
    const flat = new Float64Array(count).fill(1);
    const band = 20;
    const raised = flat.map((energy, k) => (Math.floor(k / SLICES_PER_BAND) === band ? 4 * energy : energy));
    const difference = levelMatchedDifference(flat, raised);
    expect(difference.largest.band).toBe(SLICES.bands[band]);
    expect(difference.largest.db + difference.loudnessLu).toBeCloseTo(10 * Math.log10(4), 9);
    expect(difference.loudnessLu).toBeCloseTo(loudnessLu(raised) - loudnessLu(flat), 12);
  });

  it("leaves out a band more than 60 dB under the loudest, in which nobody hears anything", () => {
    const flat = new Float64Array(count).fill(1);
    const faint = (factor: number) => flat.map((energy, k) => (k < SLICES_PER_BAND ? energy * factor : energy));
    const difference = levelMatchedDifference(faint(1e-9), faint(1e-7));
    expect(difference.heard[0]).toBe(false);
    expect(Math.abs(difference.perBandDb[0]!)).toBeGreaterThan(19);
    expect(Math.abs(difference.largest.db)).toBeLessThan(0.01);
  });

  it("with silence stays finite and is called silence", () => {
    const [nothing, sound] = [new Float64Array(count), new Float64Array(count).fill(1)];
    for (const [a, b, words] of [
      [nothing, sound, "the first is silent"],
      [sound, nothing, "the second is silent"],
      [nothing, nothing, "both are silent"],
    ] as const) {
      const difference = levelMatchedDifference(a, b);
      for (const db of [...difference.perBandDb, difference.loudnessLu, difference.rmsDb])
        expect(Number.isFinite(db)).toBe(true);
      expect(silenceWords(difference.silent)).toBe(words);
    }
  });
});

describe("verdicts", () => {
  // Jesteadt, Wier and Green 1977 (from memory): 0.5 dB at best, 1.25 dB near threshold.
  it.each([
    [0.49, "none"],
    [-0.51, "edge"],
    [1.26, "side-by-side"],
    [-3.1, "plain"],
    [6.1, "another-sound"],
  ])("a largest difference of %d dB is %s", (db, words) => {
    expect(audibility(db)).toBe(words);
  });

  it("gives a peak's shift in just-noticeable steps, and null where there is no peak", () => {
    // Q 4 peaks 12.1 dB up; at 1500 Hz the step is 0.079·1500/2 = 59 Hz.
    const level = 20 * Math.log10(4 / Math.sqrt(1 - 1 / 64));
    const shift = peakShift({ frequency: 1441, level }, { frequency: 1561, level })!;
    expect(shift.q).toBeCloseTo(4, 9);
    expect(shift.jndHz).toBeCloseTo(59.2, 1);
    expect(shift.inJnd).toBeCloseTo(2.03, 2);
    expect(shift.extrapolated).toBe(false);
    expect(peakShift(null, { frequency: 1500, level })).toBeNull();
  });

  it("counts no steps of a bump of Q under 1, which is no peak, on either side", () => {
    const heightOf = (q: number) => 20 * Math.log10(q / Math.sqrt(1 - 1 / (4 * q * q)));
    const at = (frequency: number, q: number) => ({ frequency, level: heightOf(q) });
    expect(peakShift(at(549, 0.9), at(857, 0.9))).toBeNull();
    expect(peakShift(at(549, 3), at(857, 0.99))).toBeNull();
    expect(peakShift(at(549, 3), at(857, 1.01))).not.toBeNull();
  });

  it("counts no step finer than the 1.5 % of trained listeners, however sharp the peak", () => {
    // Gagné and Zurek's formula alone would give 0.079/√100 = 0.8 %.
    const level = 20 * Math.log10(100);
    const shift = peakShift({ frequency: 1000, level }, { frequency: 1000, level })!;
    expect(shift.jndHz).toBeCloseTo(15, 2);
  });

  it("tells how much wider the second's peak is, and how much longer it rings: Fr/Q and its inverse", () => {
    const heightOf = (q: number) => 20 * Math.log10(q / Math.sqrt(1 - 1 / (4 * q * q)));
    const shift = peakShift({ frequency: 2000, level: heightOf(4) }, { frequency: 3000, level: heightOf(2) })!;
    expect(shift.bandwidth).toBeCloseTo(3000 / 2 / (2000 / 4) - 1, 6);
    expect(shift.decay).toBeCloseTo(1 / 3 - 1, 6);
  });
});
