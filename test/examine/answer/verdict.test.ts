import { describe, expect, it } from "vitest";
import { summaryFor } from "../../../src/examine/answer/summary.ts";
import { outsideOf, probabilityOf, verdictOf, verdictTitle } from "../../../src/examine/answer/verdict.ts";
import type { Group } from "../../../src/examine/weigh/groups.ts";
import { trialGuards } from "../trial-guards.ts";

const { build } = trialGuards[0]!;

/** The guard as drawn, believed so far and so well, with other departures that look the same. */
function drawn(share: number, drawnShare: number, chiSquare = 20): Group {
  const weighed = { fit: { chiSquare, degrees: 40 } };
  return {
    leader: { weighed },
    members: [],
    names: [{ faults: [] }],
    isSound: true,
    share,
    drawnShare,
  } as unknown as Group;
}

describe("a verdict", () => {
  it("gives the same probability in words as in figures: what was not weighed has its part of it", () => {
    const best = drawn(0.9, 0.9, 60);
    const probability = probabilityOf(best, best);
    expect(probability).toBeCloseTo(0.9 * (1 - outsideOf(best)), 12);
    expect(Math.round(100 * probability)).toBeLessThan(88);
    expect(summaryFor("as-drawn", [best], undefined)).toContain(`(${Math.round(100 * probability)} %)`);
  });

  it("is none where half of the belief is in what was not weighed", () => {
    // Of a chi-square of 70 with 40 degrees a sound guard has as much or more twice in a thousand.
    const best = drawn(0.8, 0.8, 70);
    expect(verdictOf([best])).toBe("unclear");
    expect(verdictOf([drawn(0.8, 0.8)])).toBe("as-drawn");
  });

  it("tells the drawing's own part of what looks like the drawing", () => {
    const summary = summaryFor("as-drawn", [drawn(0.98, 0.6)], undefined);
    expect(summary).toMatch(
      /as drawn \(5[78] %\), or departs in a way that these takes cannot tell from it \(with those 9[345] %\)/,
    );
    expect(verdictTitle(build, "as-drawn", drawn(0.98, 0.6))).toBe("As drawn, as far as these takes tell");
  });
});
