import type { Fault } from "../fault.ts";
import { byScore, type Hypothesis, score } from "../hypotheses/hypotheses.ts";
import { OPEN_FROM_OHMS } from "../likelihood/likelihood.ts";

export interface NamedFault {
  readonly kind: string;
  readonly lugs: readonly string[];
  /** The value in ohms that the readings say the part has, where another value than the build's is what is wrong. */
  readonly ohms?: number;
}

export interface Alternative {
  readonly faults: readonly NamedFault[];
  readonly message: string;
}

export interface Explanation extends Alternative {
  /**
   * How well it explains what was told, 0 to 1: the probability that a guard that is so shows readings at least this far from
   * its own (chi-square), times the probability that its symptoms would be told.
   */
  readonly fit: number;
  /** Probability, 0 to 1, that this explanation or one of `sameAs` is the truth, of all that account for every reading. */
  readonly probability: number;
  /** What the meter would show for each reading given, other parts at their nominal values; ohms, null where open. */
  readonly predicted: readonly (number | null)[];
  /** Other explanations for which every reading and symptom given would be the same. */
  readonly sameAs: readonly Alternative[];
}

/** Readings this near, in ln R, are the same: a hundredth of what a hobby meter can tell apart. */
const SAME_LOG_RATIO = 1e-4;
/** As near as a value solved from readings of 1 % need bring two explanations to each other. */
const SAME_SOLVED_LOG_RATIO = 5e-3;
const MAX_EXPLANATIONS = 20;
const MIN_SHARE = 1e-6;

export const SOUND_MESSAGE = "Nothing is wrong: this is what it should read.";

/** Hypotheses with the same predictions, the likeliest of them first. */
export interface Group {
  readonly members: Hypothesis[];
  /** How much of the belief in all groups is this one's. */
  share: number;
}

function sameReading(a: number, b: number, within: number): boolean {
  if (a >= OPEN_FROM_OHMS || b >= OPEN_FROM_OHMS) return a >= OPEN_FROM_OHMS && b >= OPEN_FROM_OHMS;
  if (a === 0 || b === 0) return a === b;
  return Math.abs(Math.log(a / b)) < within;
}

/** Only two values solved from the same readings are as good as the same where they are merely near. */
function isSolved({ faults }: Hypothesis): boolean {
  return faults.some(({ ohms }) => ohms !== undefined);
}

function samePredictions(a: Hypothesis, b: Hypothesis): boolean {
  const within = isSolved(a) && isSolved(b) ? SAME_SOLVED_LOG_RATIO : SAME_LOG_RATIO;
  return (
    a.explains === b.explains &&
    Math.abs(a.logSymptoms - b.logSymptoms) < SAME_LOG_RATIO &&
    a.prediction.ohms.every((ohms, index) => sameReading(ohms, b.prediction.ohms[index]!, within))
  );
}

/** Two parts of another value are found from either of them; the better of the two solutions stays. */
function withoutRepeats(ordered: readonly Hypothesis[]): Hypothesis[] {
  const seen = new Set<string>();
  return ordered.filter(({ faults }) => {
    if (faults.length < 2) return true;
    const key = faults
      .map(({ kind, lugs }) => `${kind} ${lugs}`)
      .sort()
      .join();
    return !seen.has(key) && seen.add(key);
  });
}

function explains({ members: [first] }: Group): boolean {
  return first!.explains;
}

/** Groups hypotheses that the readings cannot tell apart: those that account for every reading first, then the likelier. */
export function groupEqual(hypotheses: readonly Hypothesis[]): Group[] {
  const ordered = withoutRepeats([...hypotheses].sort(byScore));
  const top = ordered.length === 0 ? 0 : score(ordered[0]!);
  const groups: Group[] = [];
  let total = 0;
  for (const hypothesis of ordered) {
    const weight = Math.exp(score(hypothesis) - top);
    total += weight;
    const group = groups.find(({ members: [first] }) => samePredictions(first!, hypothesis));
    if (group) {
      group.members.push(hypothesis);
      group.share += weight;
    } else groups.push({ members: [hypothesis], share: weight });
  }
  for (const group of groups) group.share /= total;
  return groups.sort((a, b) => Number(explains(b)) - Number(explains(a)) || b.share - a.share);
}

/** Faults as an answer names them; none of them is a fault of kind "none". */
export function namedFaults(faults: readonly Fault[]): NamedFault[] {
  if (faults.length === 0) return [{ kind: "none", lugs: [] }];
  return faults.map(({ kind, lugs, ohms }) => ({ kind, lugs, ...(ohms === undefined ? {} : { ohms }) }));
}

function alternative({ faults }: Hypothesis): Alternative {
  const message = faults.length === 0 ? SOUND_MESSAGE : faults.map((fault) => fault.message).join(" And: ");
  return { faults: namedFaults(faults), message };
}

function firstExplains(groups: readonly Group[]): boolean {
  return groups[0] !== undefined && explains(groups[0]);
}

/** The groups that account for every reading; all of them where none does. */
export function tenable(groups: readonly Group[]): readonly Group[] {
  return firstExplains(groups) ? groups.filter(explains) : groups;
}

/** The leading groups in the words of an answer. */
export function explanationsOf(groups: readonly Group[]): Explanation[] {
  const total = groups.filter(explains).reduce((sum, { share }) => sum + share, 0);
  return groups
    .filter(({ share }, index) => index < 3 || (index < MAX_EXPLANATIONS && share >= MIN_SHARE))
    .map((group) => {
      const [first, ...others] = group.members;
      const { evidence, logSymptoms, prediction } = first!;
      return {
        ...alternative(first!),
        fit: evidence.fit * Math.exp(logSymptoms),
        probability: explains(group) && total > 0 ? group.share / total : 0,
        predicted: Array.from(prediction.ohms, (ohms) => (Number.isFinite(ohms) ? ohms : null)),
        sameAs: others.map(alternative),
      };
    });
}
