import { guessingProbability, percentText } from "../blind/guessing.ts";
import type { NamingTrials } from "./naming-trials.ts";
import { chancesOf, type Outcome, sequentialRule } from "./stopping.ts";

const VERDICTS: Readonly<Record<Outcome, string>> = {
  apart: "You can tell them apart.",
  alike: "You could not tell them apart: take whichever is less work.",
  open: "Neither was shown: you may hear a little of it. Try again when you are rested.",
};

/** Of more than two, to be right more often than by luck takes no more than one that stands out. */
function verdictOf(outcome: Outcome, candidates: number): string {
  if (outcome === "apart" && candidates > 2)
    return "You can tell them apart, some of them at least: the table says which you took for which.";
  return VERDICTS[outcome];
}

/** What a finished test comes to. */
export interface NamingResult {
  readonly count: string;
  readonly luck: string;
  readonly verdict: string;
}

/** @param isSequential whether the test could end after any trial @param trials that are over */
export function namingResult(
  { right, answered, candidates, outcome }: NamingTrials,
  isSequential: boolean,
): NamingResult {
  const count = `${right} of ${answered} right, ${candidates} sounds to choose from.`;
  const verdict = verdictOf(outcome ?? "open", candidates);
  if (isSequential) {
    const { apart } = chancesOf(sequentialRule(candidates), 1 / candidates);
    return {
      count,
      luck: `Of people who only guess, this test, which may end after any trial, says of ${percentText(apart)} that they can tell them apart.`,
      verdict,
    };
  }
  const luck = percentText(guessingProbability(right, answered, candidates));
  return { count, luck: `Somebody who only guesses gets at least ${right} right in ${luck} of such tests.`, verdict };
}
