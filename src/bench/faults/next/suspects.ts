import { type NamedFault, namedFaults } from "../answer/explanations.ts";
import type { Group } from "../hypotheses/groups.ts";
import { type Hypothesis, score } from "../hypotheses/hypothesis.ts";

/** Explanations beyond these weigh too little to choose a check for. */
const MAX_SUSPECTS = 60;
const MIN_SHARE = 1e-4;

/** One explanation, and how much of the belief is its own. */
export interface Suspect<Of = Hypothesis> {
  readonly hypothesis: Of;
  readonly share: number;
}

/** The leading explanations, those that read alike each for itself. */
export function suspectsOf(groups: readonly Group[]): Suspect[] {
  const members = groups.flatMap((group) => group.members);
  const top = members.reduce((best, hypothesis) => Math.max(best, score(hypothesis)), Number.NEGATIVE_INFINITY);
  const weighted = members.map((hypothesis) => ({ hypothesis, share: Math.exp(score(hypothesis) - top) }));
  const total = weighted.reduce((sum, { share }) => sum + share, 0);
  return weighted
    .map(({ hypothesis, share }) => ({ hypothesis, share: share / total }))
    .filter(({ share }) => share > MIN_SHARE)
    .sort((a, b) => b.share - a.share)
    .slice(0, MAX_SUSPECTS);
}

export function namesOf(suspects: readonly Suspect<Pick<Hypothesis, "faults">>[]): NamedFault[][] {
  return suspects.map(({ hypothesis }) => namedFaults(hypothesis.faults));
}
