import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Loads } from "../../../src/bench/sheet/landing/points.ts";
import type { LandingProblem, OpenEnd } from "../../../src/bench/sheet/landing/problem.ts";
import { searchLanding } from "../../../src/bench/sheet/landing/search.ts";
import { effort } from "../../effort.ts";

const LUGS = ["volume.case", "tone1.case", "tone2.case", "star"] as const;

/** Of every way to land the ends, the points of the best. */
function bestByExhaustion(problem: LandingProblem): number {
  const { open } = problem;
  const loads = new Loads(problem);
  const from = (index: number, own: number): number => {
    if (index === open.length) return own + loads.points;
    const { options, sitting } = open[index]!;
    return Math.min(
      ...options.map(({ lug, points }) => {
        loads.add(lug, sitting, 1);
        const best = from(index + 1, own + points);
        loads.add(lug, sitting, -1);
        return best;
      }),
    );
  };
  return from(0, 0);
}

const option = fc.record({ lug: fc.constantFrom(...LUGS), points: fc.integer({ min: 0, max: 12 }) });
const openEnd: fc.Arbitrary<OpenEnd> = fc.record({
  name: fc.constant("end"),
  sitting: fc.constantFrom(1 as const, 2 as const),
  options: fc.uniqueArray(option, { minLength: 1, maxLength: 4, selector: ({ lug }) => lug }),
});
const settled = fc
  .array(fc.tuple(fc.constantFrom(...LUGS), fc.tuple(fc.nat(4), fc.nat(4))), { maxLength: 4 })
  .map((entries) => new Map<string, readonly [number, number]>(entries));

describe("where ends land", () => {
  it("has the fewest points of all ways, on guards of up to eight open ends", () => {
    const problems = fc.record({
      open: fc.array(openEnd, { maxLength: effort(6, 8) }),
      settled,
      maxEnds: fc.constantFrom(3, 4, 5),
      isCase: fc.constant((lug: string) => lug !== "star"),
    });
    fc.assert(
      fc.property(problems, (problem) => {
        const landing = searchLanding(problem);
        expect(landing.isProven).toBe(true);
        expect(landing.points).toBe(bestByExhaustion(problem));
        const loads = new Loads(problem);
        let own = 0;
        for (const [index, { options, sitting }] of problem.open.entries()) {
          const { lug, points } = options[landing.choice[index]!]!;
          loads.add(lug, sitting, 1);
          own += points;
        }
        expect(own + loads.points).toBe(landing.points);
      }),
      { numRuns: effort(150, 1500) },
    );
  });

  it("says where it gave up, and has a landing all the same", () => {
    const options = LUGS.map((lug) => ({ lug, points: 0 }));
    const open = Array.from({ length: 12 }, (): OpenEnd => ({ name: "end", sitting: 2, options }));
    const landing = searchLanding({ open, settled: new Map(), maxEnds: 4, isCase: () => true }, 40);
    expect(landing.isProven).toBe(false);
    expect(landing.choice).toHaveLength(12);
  });

  it("leaves no joint with too many ends where there is room elsewhere", () => {
    const options = [
      { lug: "volume.case", points: 0 },
      { lug: "tone1.case", points: 50 },
    ];
    const open = Array.from({ length: 6 }, (): OpenEnd => ({ name: "end", sitting: 2, options }));
    const { choice } = searchLanding({ open, settled: new Map(), maxEnds: 4, isCase: () => true });
    expect(choice.filter((index) => index === 0)).toHaveLength(4);
  });
});
