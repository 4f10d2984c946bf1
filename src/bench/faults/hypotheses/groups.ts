import { isOpen } from "../../meter/hobby-meter.ts";
import { byScore, type Hypothesis, score } from "./hypothesis.ts";

/** Readings this near, in ln R, are the same: a hundredth of what a hobby meter can tell apart. */
const SAME_LOG_RATIO = 1e-4;
/** As near as a value solved from readings of 1 % need bring two explanations to each other. */
const SAME_SOLVED_LOG_RATIO = 5e-3;

/** Hypotheses with the same predictions, the likeliest of them first. */
export interface Group {
  readonly members: Hypothesis[];
  /** How much of the belief in all groups is this one's. */
  share: number;
}

function sameReading(a: number, b: number, within: number): boolean {
  if (isOpen(a) || isOpen(b)) return isOpen(a) && isOpen(b);
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

/** Whether a group accounts for every reading. */
export function explains({ members: [first] }: Group): boolean {
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

function firstExplains(groups: readonly Group[]): boolean {
  return groups[0] !== undefined && explains(groups[0]);
}

/** The groups that account for every reading; all of them where none does. */
export function tenable(groups: readonly Group[]): readonly Group[] {
  return firstExplains(groups) ? groups.filter(explains) : groups;
}
