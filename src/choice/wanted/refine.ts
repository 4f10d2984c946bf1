import { trySome } from "../search/descent.ts";
import { type Combination, Trials } from "../search/trials.ts";
import type { Candidate, Outcome } from "./candidate.ts";

/** A candidate with one choice of values. */
export interface Tried {
  readonly candidate: Candidate;
  readonly combination: Combination;
  readonly outcome: Outcome;
}

/** Of two that reach as much, the one that changes fewer values: far under any difference that counts. */
const A_CHANGE = 1e-9;

/** What ranks one try before another. */
export function rankOf({ candidate, combination, outcome }: Tried): number {
  return outcome.cost + A_CHANGE * candidate.changedIn(combination);
}

export function tryValues(candidate: Candidate, combination: Combination): Tried {
  return { candidate, combination, outcome: candidate.outcomeOf(candidate.guardOf(combination)) };
}

interface Effort {
  readonly checkpoint: () => void;
  /** How many combinations may be tried. */
  readonly most: number;
  /** Whether values that meet every wish are good enough. */
  readonly endsWhenMet: boolean;
}

/**
 * One value after the other, each the best beside the rest, until none gains: a first sight of what a candidate's values can do.
 * @returns how many combinations were tried
 */
export function sketch(
  candidate: Candidate,
  { checkpoint, most }: Omit<Effort, "endsWhenMet">,
  see: (tried: Tried) => void,
): number {
  let best = tryValues(candidate, candidate.own);
  let count = 0;
  for (let gained = true; gained; ) {
    gained = false;
    for (const [axis, size] of candidate.sizes.entries()) {
      const now = best.combination;
      for (let choice = 0; choice < size; choice++) {
        if (choice === now[axis]) continue;
        if (count >= most) return count;
        checkpoint();
        count++;
        const tried = tryValues(candidate, now.with(axis, choice));
        see(tried);
        if (rankOf(tried) >= rankOf(best)) continue;
        best = tried;
        gained = true;
      }
    }
  }
  return count;
}

/** Every combination, those that change the fewest values first. */
function everyCombination(candidate: Candidate): Combination[] {
  return candidate.sizes
    .reduce<Combination[]>(
      (all, size) => all.flatMap((one) => Array.from({ length: size }, (_, choice) => [...one, choice])),
      [[]],
    )
    .sort((a, b) => candidate.changedIn(a) - candidate.changedIn(b));
}

/**
 * The best values of a candidate: all of them where there are no more than may be tried, else by descents.
 * @param see called with everything tried
 */
export function refine(
  candidate: Candidate,
  { checkpoint, most, endsWhenMet }: Effort,
  see: (tried: Tried) => void,
): { tried: number; isExhaustive: boolean } {
  let at = candidate.own;
  let isMet = false;
  const guardOf = (combination: Combination) => {
    at = combination;
    return candidate.guardOf(combination);
  };
  const score = (guard: Parameters<Candidate["outcomeOf"]>[0]) => {
    const tried = { candidate, combination: at, outcome: candidate.outcomeOf(guard) };
    isMet = tried.outcome.cost === 0;
    see(tried);
    return { cost: rankOf(tried), says: "" };
  };
  const trials = new Trials(guardOf, score, { checkpoint, most });
  trials.costOf(candidate.own);
  if (candidate.combinations > most) {
    trySome(trials, candidate.sizes);
    return { tried: trials.count, isExhaustive: false };
  }
  for (const combination of everyCombination(candidate)) {
    trials.costOf(combination);
    if (endsWhenMet && isMet) break;
  }
  return { tried: trials.count, isExhaustive: trials.count === candidate.combinations };
}
