import { describe, expect, test } from "vitest";
import { buildable } from "../../../src/choice/buildable/buildable.ts";
import { compareScores } from "../../../src/choice/buildable/score.ts";
import type { Drive } from "../../../src/choice/drive.ts";
import { drawerSchema } from "../../../src/drawer/drawer-schema.ts";
import { bruteScore, everyGuard, type Heap } from "./brute-force.ts";
import { driveOf } from "./drive.ts";
import { pickupPart, piecesOfHeap } from "./heaps.ts";

const HEAP: Heap = {
  pickups: ["p90", "single-vintage"],
  pots: [{ ohms: "250k", pushPull: false }],
  caps: ["22n"],
  resistors: [],
  selectors: ["toggle-3"],
  smallSwitches: 0,
};

/** One part more, as the heap and as the drawer have it. */
const MORE: readonly (readonly [heap: Partial<Heap>, part: object])[] = [
  [{ pickups: [...HEAP.pickups, "single-vintage"] }, pickupPart("single-vintage")],
  [{ pickups: [...HEAP.pickups, "humbucker-medium"] }, pickupPart("humbucker-medium")],
  [{ pots: [...HEAP.pots, { ohms: "250k", pushPull: true }] }, pot({ drives: "dpdt" })],
  [{ pots: [...HEAP.pots, { ohms: "250k", pushPull: false }] }, pot({})],
  [{ smallSwitches: 1 }, { kind: "switch", type: "dpdt" }],
  [{ caps: ["22n", "47n"] }, { kind: "cap", capacitance: "47n" }],
];

function pot(rest: object) {
  return { kind: "pot", resistance: "250k", taper: "audio", ...rest };
}

const wiringsOf = (heap: Heap) => new Set(everyGuard(heap).map(({ wiring }) => wiring));

describe("the one purchase that opens most", () => {
  const candidates = MORE.map(([, part]) => drawerSchema.parse({ items: [{ part: part as never }] }).items[0]!);
  const found = buildable({ free: piecesOfHeap(HEAP), hasJack: true }, { driveOf, candidates });

  test("opens as many wirings as trying every plan with it finds, and the most comes first", () => {
    const known = wiringsOf(HEAP);
    const opened = MORE.map(([more]) => [...wiringsOf({ ...HEAP, ...more })].filter((each) => !known.has(each)).length);
    const expected = opened
      .filter((count) => count > 0)
      .sort((a, b) => b - a)
      .slice(0, 5);
    expect(found.purchases.map(({ opens }) => opens)).toEqual(expected);
    expect(expected.length).toBeGreaterThan(2);
  });

  test("parts that bring other values alone open nothing, and are not named", () => {
    expect(found.purchases.map(({ part }) => part.kind)).not.toContain("cap");
  });
});

describe("a drawer too large to hear every guard of", () => {
  const question = {
    free: piecesOfHeap({ ...HEAP, pots: [...HEAP.pots, { ohms: "500k", pushPull: true }] }),
    hasJack: true,
  };
  const all = buildable(question, { driveOf, candidates: [] });

  test("is looked through within its effort, and the answer says so", () => {
    const some = buildable(question, { driveOf, candidates: [], most: 10 });
    expect(all.guards.count).toBeGreaterThan(10);
    expect(some).toMatchObject({ heard: 10, isExhaustive: false, guards: all.guards });
    expect(some.method).toMatch(new RegExp(`^10 of ${all.guards.count} guards were heard: .*may have been missed$`));
    expect(compareScores(all.best[0]!.score, some.best[0]!.score)).toBeLessThanOrEqual(0);
  });

  test("is not counted to its end either, and then says more than", () => {
    const some = buildable(question, { driveOf, candidates: [], most: 3, mostCounted: 4 });
    expect(some).toMatchObject({ wirings: { count: 4, isAll: false }, guards: { isAll: false }, isExhaustive: false });
    expect(some.guards.count).toBeLessThan(all.guards.count);
    expect(some.method).toContain(`3 of more than ${some.guards.count} guards were heard`);
  });

  test("may be given up between any two guards", () => {
    let calls = 0;
    const checkpoint = () => {
      if (++calls === 7) throw new Error("nobody waits");
    };
    expect(() => buildable(question, { driveOf, checkpoint })).toThrow("nobody waits");
  });

  test("the figures of a guard are those of its plan heard by itself", () => {
    const [best] = all.best;
    const { cells: _, ...score } = best!.score;
    expect(bruteScore(best!.plan, new Map<string, Drive>())).toEqual(score);
  });
});
