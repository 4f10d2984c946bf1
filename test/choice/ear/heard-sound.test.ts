import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { levelMatchedDifference } from "../../../src/choice/compare/difference.ts";
import { characterOf } from "../../../src/choice/ear/character.ts";
import { heardDifference } from "../../../src/choice/ear/heard-difference.ts";
import { FLOOR_DB, heardSound, type Through } from "../../../src/choice/ear/heard-sound.ts";
import { SLICES } from "../../../src/choice/slices.ts";
import { anyEnergies } from "../map/random-sounds.ts";

/** Falls by 12 dB an octave above 1 kHz, as plucked strings do or faster; by the energy in an ERB. */
const strings = SLICES.frequenciesHz.map((hertz) => Math.min(1, (1000 / hertz) ** 4));
const flat = new Float64Array(strings.length).fill(1);

const raised = (sound: Float64Array, from: number, to: number, db: number) =>
  sound.map((energy, k) =>
    SLICES.frequenciesHz[k]! >= from && SLICES.frequenciesHz[k]! < to ? energy * 10 ** (db / 10) : energy,
  );

function heard(a: Float64Array, b: Float64Array, through?: Through) {
  return heardDifference(heardSound(a, through), heardSound(b, through));
}

describe("what is heard of a sound", () => {
  it("is the same at any level: louder by so many LU, and equal in every band", () => {
    fc.assert(
      fc.property(anyEnergies, fc.double({ min: -40, max: 40, noNaN: true }), (sound, gainDb) => {
        const louder = sound.map((energy) => energy * 10 ** (gainDb / 10));
        const { loudnessLu, perBandDb } = heard(sound, louder);
        expect(loudnessLu).toBeCloseTo(gainDb, 9);
        for (const db of perBandDb) expect(Math.abs(db)).toBeLessThan(1e-9);
      }),
      { numRuns: 50 },
    );
  });

  it("has nothing to say of 10 dB at 15 kHz, where neither strings nor speaker have anything", () => {
    const brighter = raised(strings, 14_000, 16_000, 10);
    expect(levelMatchedDifference(strings, brighter).largest.db).toBeGreaterThan(9);
    expect(Math.abs(heard(strings, brighter).largest.db)).toBeLessThan(0.05);
    // A signal that has it, on headphones, is another matter.
    expect(heard(flat, raised(flat, 14_000, 16_000, 10), "none").largest.db).toBeGreaterThan(6);
  });

  it("has all of what is done where strings and speaker have most", () => {
    const brighter = raised(strings, 1500, 3500, 4);
    const { largest, loudnessLu } = heard(strings, brighter);
    expect(largest.db + loudnessLu).toBeGreaterThan(3.8);
    expect(largest.db + loudnessLu).toBeLessThan(4.01);
    expect(largest.band.centre).toBeGreaterThan(1500);
    expect(largest.band.centre).toBeLessThan(3500);
  });

  it("leaves out what a louder band beside it masks", () => {
    // A band 40 dB under its lower neighbour: the neighbour's excitation, some 15 dB down, hides 10 dB more of it.
    const at = SLICES.bands[20]!;
    const next = SLICES.bands[21]!;
    const loud = SLICES.frequenciesHz.map((hertz) => (hertz >= at.low && hertz < at.high ? 1 : 1e-9));
    const soft = raised(loud, next.low, next.high, 50);
    const softer = raised(loud, next.low, next.high, 60);
    expect(levelMatchedDifference(soft, softer).largest.db).toBeCloseTo(10, 1);
    expect(Math.abs(heard(soft, softer, "none").largest.db)).toBeLessThan(0.2);
  });

  it("is threshold and room where there is nothing at all", () => {
    const { levelsDb } = heardSound(new Float64Array(strings.length));
    expect([...levelsDb]).toEqual([...FLOOR_DB]);
    for (const level of FLOOR_DB) expect(level).toBeGreaterThanOrEqual(20);
  });
});

describe("a sound beside another", () => {
  it.each([
    [3000, 5000, 5, "brighter"],
    [3000, 5000, -5, "duller"],
    [100, 250, 5, "thicker"],
    [100, 250, -5, "thinner"],
  ] as const)("with %d to %d Hz moved by %d dB is %s", (from, to, db, word) => {
    const [a, b] = [heardSound(strings), heardSound(raised(strings, from, to, db))];
    expect(characterOf(a, b, heardDifference(a, b))).toBe(word);
  });
});
