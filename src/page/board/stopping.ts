import { TOLD_APART_BELOW } from "../blind/guessing.ts";

/** How a naming test ends: told apart, not told apart, or neither shown within its trials. */
export type Outcome = "apart" | "alike" | "open";

/** When a naming test ends. */
export interface StoppingRule {
  /** What the answers so far come to; nothing while the test goes on. */
  outcome(right: number, answered: number): Outcome | undefined;
}

/** The most trials: more tire the ear. */
export const MOST_TRIALS = 50;

/** Somebody who hears which it is in every other trial and guesses in the rest: what a test ought not to miss; a choice, no source. */
export function hearingProbability(candidates: number): number {
  return (1 + 1 / candidates) / 2;
}

/** How often somebody who hears half may be told that they do not; as often as the other error. */
const MISSED_BELOW = TOLD_APART_BELOW;

/**
 * Ends as soon as the answers say enough: A. Wald's sequential probability ratio test (Ann. Math. Stat. 16, 117, 1945) of guessing against
 * hearing half. The ratio of the two likelihoods is a martingale to somebody who guesses, so that it ever comes to 1/0.05 in at most
 * 5 % of tests, however long they go on (J. Ville, Étude critique de la notion de collectif, 1939): to look after every trial is
 * allowed. The bounds are Wald's without the terms that would let them be nearer. @param candidates two or more
 */
export function sequentialRule(candidates: number): StoppingRule {
  const [guessing, hearing] = [1 / candidates, hearingProbability(candidates)];
  const [forRight, forWrong] = [Math.log(hearing / guessing), Math.log((1 - hearing) / (1 - guessing))];
  return {
    outcome(right, answered) {
      const evidence = right * forRight + (answered - right) * forWrong;
      if (evidence >= -Math.log(TOLD_APART_BELOW)) return "apart";
      if (evidence <= Math.log(MISSED_BELOW)) return "alike";
      return answered >= MOST_TRIALS ? "open" : undefined;
    },
  };
}

/** How often a rule ends in which way, and after how many trials in the mean. */
export interface Chances extends Readonly<Record<Outcome, number>> {
  readonly meanTrials: number;
}

/** Exact, trial by trial through every count of right answers. @param probability of a right answer, the same in every trial */
export function chancesOf({ outcome }: StoppingRule, probability: number): Chances {
  const ended = { apart: 0, alike: 0, open: 0, meanTrials: 0 };
  let going = new Map([[0, 1]]);
  for (let answered = 1; going.size > 0; answered++) {
    const next = new Map<number, number>();
    for (const [before, share] of going) {
      for (const [right, chance] of [
        [before + 1, probability],
        [before, 1 - probability],
      ] as const) {
        const end = outcome(right, answered);
        const reached = share * chance;
        if (end === undefined) next.set(right, (next.get(right) ?? 0) + reached);
        else {
          ended[end] += reached;
          ended.meanTrials += reached * answered;
        }
      }
    }
    going = next;
  }
  return ended;
}
