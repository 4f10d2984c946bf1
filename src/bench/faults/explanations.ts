import { OPEN_FROM_OHMS } from "./evidence.ts";
import type { Fault } from "./fault.ts";
import { type Hypothesis, score } from "./hypotheses.ts";

export interface NamedFault {
  readonly kind: string;
  readonly lugs: readonly string[];
}

export interface Alternative {
  readonly faults: readonly NamedFault[];
  readonly message: string;
}

export interface Explanation extends Alternative {
  /** Probability, 0 to 1, that this explanation or one of `sameAs` is the truth; all explanations sum to at most 1. */
  readonly fit: number;
  /** Other explanations for which every reading and symptom given would be the same. */
  readonly sameAs: readonly Alternative[];
}

/** Readings this near, in ln R, are the same: a hundredth of what a hobby meter can tell apart. */
const SAME_LOG_RATIO = 1e-4;
const MAX_EXPLANATIONS = 20;
const MIN_FIT = 1e-6;

export const SOUND_MESSAGE = "Nothing is wrong: this is what it should read.";

/** Hypotheses with the same predictions, the likeliest of them first. */
export interface Group {
  readonly members: Hypothesis[];
  fit: number;
}

function sameReading(a: number, b: number): boolean {
  if (a >= OPEN_FROM_OHMS || b >= OPEN_FROM_OHMS) return a >= OPEN_FROM_OHMS && b >= OPEN_FROM_OHMS;
  if (a === 0 || b === 0) return a === b;
  return Math.abs(Math.log(a / b)) < SAME_LOG_RATIO;
}

function samePredictions(a: Hypothesis, b: Hypothesis): boolean {
  return (
    Math.abs(a.logSymptoms - b.logSymptoms) < SAME_LOG_RATIO &&
    a.prediction.ohms.every((ohms, index) => sameReading(ohms, b.prediction.ohms[index]!))
  );
}

/** Groups hypotheses that the readings cannot tell apart, best group first. */
export function groupEqual(hypotheses: readonly Hypothesis[]): Group[] {
  const ordered = [...hypotheses].sort((a, b) => score(b) - score(a));
  const top = ordered.length === 0 ? 0 : score(ordered[0]!);
  const groups: Group[] = [];
  let total = 0;
  for (const hypothesis of ordered) {
    const weight = Math.exp(score(hypothesis) - top);
    total += weight;
    const group = groups.find(({ members: [first] }) => samePredictions(first!, hypothesis));
    if (group) {
      group.members.push(hypothesis);
      group.fit += weight;
    } else groups.push({ members: [hypothesis], fit: weight });
  }
  for (const group of groups) group.fit /= total;
  return groups.sort((a, b) => b.fit - a.fit);
}

/** Faults as an answer names them; none of them is a fault of kind "none". */
export function namedFaults(faults: readonly Fault[]): NamedFault[] {
  if (faults.length === 0) return [{ kind: "none", lugs: [] }];
  return faults.map(({ kind, lugs }) => ({ kind, lugs }));
}

function alternative({ faults }: Hypothesis): Alternative {
  const message = faults.length === 0 ? SOUND_MESSAGE : faults.map((fault) => fault.message).join(" And: ");
  return { faults: namedFaults(faults), message };
}

/** The leading groups in the words of an answer. */
export function explanationsOf(groups: readonly Group[]): Explanation[] {
  return groups
    .filter(({ fit }, index) => index < 3 || (index < MAX_EXPLANATIONS && fit >= MIN_FIT))
    .map(({ members: [first, ...others], fit }) => ({
      ...alternative(first!),
      fit,
      sameAs: others.map(alternative),
    }));
}
