import type { LandingProblem, Sitting } from "./problem.ts";

/**
 * What a joint costs, in points that stand for trouble at the bench; common practice, no source. Heating a case bakes the pot,
 * heating a lug again loosens what is on it; a third end has to be held, a fourth slips, and more than are allowed make a cold joint.
 */
export const POINTS = {
  caseHeated: 3,
  lugHeated: 1,
  lugHeatedAgain: 2,
  thirdEnd: 1,
  fourthEnd: 2,
  furtherEnd: 4,
  tooMany: 1000,
  /** An end somewhere else than the build has it. */
  moved: 1,
  /** Each 20 mm of wire or lead. */
  metre: 50,
} as const;

function crowding(ends: number, maxEnds: number): number {
  const own = [0, 0, 0, POINTS.thirdEnd, POINTS.thirdEnd + POINTS.fourthEnd];
  const usual = own[ends] ?? own[4]! + (ends - 4) * POINTS.furtherEnd;
  return usual + Math.max(0, ends - maxEnds) * POINTS.tooMany;
}

/** The points of all joints at one place, by how many ends each sitting brings. */
export function placePoints(isCase: boolean, [first, second]: readonly [number, number], maxEnds: number): number {
  if (isCase) {
    const heated = (ends: number) => (ends > 0 ? POINTS.caseHeated : 0) + crowding(ends, maxEnds);
    return heated(first) + heated(second);
  }
  const all = first + second;
  if (all === 0) return 0;
  return POINTS.lugHeated + (first > 0 && second > 0 ? POINTS.lugHeatedAgain : 0) + crowding(all, maxEnds);
}

/** How many ends every place has, as ends are put and taken away. */
export class Loads {
  readonly #problem: LandingProblem;
  readonly #ends = new Map<string, [number, number]>();
  #points = 0;

  constructor(problem: LandingProblem) {
    this.#problem = problem;
    for (const [lug, [first, second]] of problem.settled) {
      this.#ends.set(lug, [first, second]);
      this.#points += placePoints(problem.isCase(lug), [first, second], problem.maxEnds);
    }
  }

  get points(): number {
    return this.#points;
  }

  /** Puts one end more, or with −1 takes one away. */
  add(lug: string, sitting: Sitting, count: 1 | -1): void {
    const { isCase, maxEnds } = this.#problem;
    const ends = this.#ends.get(lug) ?? [0, 0];
    this.#ends.set(lug, ends);
    const before = placePoints(isCase(lug), ends, maxEnds);
    ends[sitting - 1]! += count;
    this.#points += placePoints(isCase(lug), ends, maxEnds) - before;
  }
}
