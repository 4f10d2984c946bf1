import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { levelMatchedDifference } from "../../../src/choice/compare/difference.ts";
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

  it("is what a comparison gives as its RMS where all bands are heard in both", () => {
    const loud = anyEnergies.map((energies) => energies.map((energy) => energy ** 0.3));
    fc.assert(
      fc.property(loud, loud, (a, b) => {
        const compared = levelMatchedDifference(a, b);
        fc.pre([a, b].every((each) => cellSound(each).heard.every(Boolean)));
        // A band just above the range heard may be raised by the K-weighting's slope across it.
        expect(distanceDb(point(a), point(b))).toBeCloseTo(compared.rmsDb, 6);
      }),
    );
  });

  it("does not go with bands that are heard in neither", () => {
    const quiet = (level: number) =>
      SLICES.frequenciesHz.map((hertz) => (hertz > 5000 ? 10 ** ((level - 90) / 10) : 1));
    expect(distanceDb(point(quiet(0)), point(quiet(-30)))).toBeLessThan(1e-6);
  });

  it("of pairs stands in the order of the pairs", () => {
    const points = [0, 3, 7, 12].map((x) => Float64Array.of(x, x));
    expect([...pairDistances(points)]).toEqual([3, 7, 12, 4, 9, 5]);
  });
});
