import type { Fault } from "../fault.ts";
import { byScore, type Hypothesis } from "./hypothesis.ts";
import type { Weigher } from "./weigher.ts";

/** Hypotheses whose likeliest parts the readings are weighed at again; the first look is linear about nominal parts. */
const REFINED = 60;

/** The sound guard and every one of these single faults, best first; those in front weighed about their own likeliest parts. */
export function singleHypotheses(weigher: Weigher, faults: readonly Fault[], checkpoint: () => void): Hypothesis[] {
  const all = [[], ...faults.map((fault) => [fault])].map((each) => weigher.weigh(each));
  all.sort(byScore);
  checkpoint();
  return [...all.slice(0, REFINED).map((each) => weigher.refined(each)), ...all.slice(REFINED)].sort(byScore);
}
