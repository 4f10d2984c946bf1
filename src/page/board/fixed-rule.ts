import { guessingProbability, TOLD_APART_BELOW } from "../blind/guessing.ts";
import type { StoppingRule } from "./stopping.ts";

/** Ends after a number of trials chosen before the first, and tells nothing on the way. */
export function fixedRule(candidates: number, trials: number): StoppingRule {
  return {
    outcome(right, answered) {
      if (answered < trials) return undefined;
      return guessingProbability(right, answered, candidates) < TOLD_APART_BELOW ? "apart" : "alike";
    },
  };
}
