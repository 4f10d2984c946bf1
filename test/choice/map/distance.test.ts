import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { heardDifference } from "../../../src/choice/ear/heard-difference.ts";
import { heardSound } from "../../../src/choice/ear/heard-sound.ts";
import { cellSound } from "../../../src/choice/map/cell-sound.ts";
import { distanceDb, pairDistances } from "../../../src/choice/map/distance.ts";
import { SLICES } from "../../../src/choice/slices.ts";
import { anyEnergies } from "./random-sounds.ts";

const point = (energies: Float64Array) => cellSound(energies).point;
/** Sums of some forty squares in double precision. */
const ROUNDING = 1e-9;

describe("the distance of two sounds", () => {
  it("is none to itself, at any level, and no less than none", () => {
    fc.assert(
      fc.property(anyEnergies, anyEnergies, fc.double({ min: -40, max: 40, noNaN: true }), (a, b, gainDb) => {
        const louder = a.map((energy) => energy * 10 ** (gainDb / 10));
        expect(distanceDb(point(a), point(a))).toBe(0);
        expect(distanceDb(point(a), point(louder))).toBeLessThan(ROUNDING);
        expect(distanceDb(point(a), point(b))).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it("is the same both ways, and no way round by a third is shorter", () => {
    fc.assert(
      fc.property(anyEnergies, anyEnergies, anyEnergies, (a, b, c) => {
        const [ab, ba] = [distanceDb(point(a), point(b)), distanceDb(point(b), point(a))];
        expect(ab).toBe(ba);
        expect(distanceDb(point(a), point(c))).toBeLessThanOrEqual(ab + distanceDb(point(b), point(c)) + ROUNDING);
      }),
    );
  });

  it("is what a comparison gives as its RMS", () => {
    fc.assert(
      fc.property(anyEnergies, anyEnergies, (a, b) => {
        const compared = heardDifference(heardSound(a), heardSound(b));
        const squares = compared.perBandDb.reduce((sum, db) => sum + db * db, 0);
        expect(distanceDb(point(a), point(b))).toBe(compared.rmsDb);
        expect(compared.rmsDb).toBeCloseTo(Math.sqrt(squares / SLICES.bands.length), 9);
      }),
    );
  });

  it("does not go with bands that are heard in neither", () => {
    const quiet = (level: number) =>
      SLICES.frequenciesHz.map((hertz) => (hertz > 5000 ? 10 ** ((level - 90) / 10) : 1));
    // At 80 dB in all they lie 30 dB and more under the room: a thousandth of its power moves it by 0.004 dB.
    expect(distanceDb(point(quiet(0)), point(quiet(-30)))).toBeLessThan(0.01);
  });

  it("of pairs stands in the order of the pairs", () => {
    const points = [0, 3, 7, 12].map((x) => Float64Array.of(x, x));
    expect([...pairDistances(points)]).toEqual([3, 7, 12, 4, 9, 5]);
  });
});
