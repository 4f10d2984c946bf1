import { describe, expect, test } from "vitest";
import { buildable } from "../../../src/choice/buildable/buildable.ts";
import type { Drive } from "../../../src/choice/drive.ts";
import { effort } from "../../effort.ts";
import { type BruteScore, bruteScore, everyGuard } from "./brute-force.ts";
import { driveOf } from "./drive.ts";
import { piecesOfHeap, smallHeaps } from "./heaps.ts";

const byRank = (a: BruteScore, b: BruteScore) =>
  b.sounds - a.sounds || b.humFree - a.humFree || a.unevenness - b.unevenness || a.trebleLoss - b.trebleLoss;

describe("what can be built from a small drawer", () => {
  test("is every guard there is, and the best of each wiring in the order of every guard heard one by one", {
    timeout: 900_000,
  }, () => {
    const drives = new Map<string, Drive>();
    for (const heap of smallHeaps(effort(2, 20))) {
      const all = everyGuard(heap);
      const found = buildable({ free: piecesOfHeap(heap), hasJack: true }, { driveOf, candidates: [] });
      expect(found.isExhaustive).toBe(true);
      expect(found.guards.count).toBe(all.length);
      const wirings = new Map<string, BruteScore>();
      for (const { wiring, plan } of all) {
        const score = bruteScore(plan, drives);
        const best = wirings.get(wiring);
        if (!best || byRank(score, best) < 0) wirings.set(wiring, score);
      }
      expect(found.wirings.count).toBe(wirings.size);
      const expected = [...wirings.values()].sort(byRank).slice(0, 12);
      expect(found.best.map(({ score: { cells: _, ...score } }) => score)).toEqual(expected);
    }
  });
});
