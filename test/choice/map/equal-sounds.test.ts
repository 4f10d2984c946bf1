import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { audibility } from "../../../src/choice/compare/verdict.ts";
import { heardDifference } from "../../../src/choice/ear/heard-difference.ts";
import { heardSound } from "../../../src/choice/ear/heard-sound.ts";
import { addedByGuards, guardsThatHave } from "../../../src/choice/map/adds.ts";
import { cellSound } from "../../../src/choice/map/cell-sound.ts";
import { equalPairs, equalsOf } from "../../../src/choice/map/equal-sounds.ts";
import { equalGroups } from "../../../src/choice/map/groups.ts";
import { SLICES } from "../../../src/choice/slices.ts";
import { anyEnergies, nearby } from "./random-sounds.ts";

describe("cells that pass for one", () => {
  it("are those of which a comparison says that nobody hears a difference", () => {
    const small = fc.array(fc.double({ min: -0.4, max: 0.4, noNaN: true }), { minLength: 3, maxLength: 40 });
    fc.assert(
      fc.property(anyEnergies, small, (energies, bySlice) => {
        const other = nearby(energies, bySlice);
        const said = audibility(heardDifference(heardSound(energies), heardSound(other)).largest.db);
        const sounds = [cellSound(energies), cellSound(other)];
        expect(equalPairs(sounds, "none").length > 0).toBe(said === "none");
        expect(equalPairs(sounds, "edge").length > 0).toBe(said === "none" || said === "edge");
      }),
    );
  });

  it("are told apart where a single band differs by more, however many agree", () => {
    const flat = new Float64Array(SLICES.frequenciesHz.length).fill(1);
    const same = cellSound(flat);
    const louderInOne = (db: number) => ({
      ...same,
      point: same.point.map((level, at) => (at === 20 ? level + db : level)),
    });
    const sounds = [same, louderInOne(0.45), louderInOne(0.6)];
    expect(equalPairs(sounds, "none").map(({ first, second }) => [first, second])).toEqual([
      [1, 2],
      [0, 1],
    ]);
  });
});

/** Cells along a line, equal where they lie closer than 1. */
function pairsOnLine(places: readonly number[]) {
  const pairs = places.flatMap((a, first) =>
    places.flatMap((b, second) =>
      second > first && Math.abs(a - b) < 1 ? [{ first, second, largestDb: Math.abs(a - b) }] : [],
    ),
  );
  return pairs.sort((a, b) => a.largestDb - b.largestDb);
}

describe("groups", () => {
  it("hold only cells that all pass for one another, and every cell once", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 5, noNaN: true }), { maxLength: 30 }), (places) => {
        const groups = equalGroups(places.length, pairsOnLine(places));
        for (const group of groups)
          for (const a of group) for (const b of group) expect(Math.abs(places[a]! - places[b]!)).toBeLessThan(1);
        const cells = groups.flat();
        expect(new Set(cells).size).toBe(cells.length);
      }),
    );
  });

  it("break a chain of small steps where its ends are told apart, and keep the nearest together", () => {
    expect(equalGroups(4, pairsOnLine([0, 0.8, 1.2, 9]))).toEqual([[1, 2]]);
  });
});

describe("what a guard adds", () => {
  const guards = [0, 0, 1, 1, 2];
  const equals = equalsOf(5, [
    { first: 1, second: 2, largestDb: 0.1 },
    { first: 2, second: 3, largestDb: 0.2 },
  ]);

  it("is its cells that no other guard has, whatever equals they have on itself", () => {
    expect(addedByGuards(guards, equals, 3)).toEqual([
      { guard: 0, cells: [0], of: 2 },
      { guard: 1, cells: [3], of: 2 },
      { guard: 2, cells: [4], of: 1 },
    ]);
  });

  it("is asked of liked cells the other way round: which guards have them", () => {
    expect(guardsThatHave([0, 2, 4], guards, equals)).toEqual([[0], [0, 1], [2]]);
  });
});
