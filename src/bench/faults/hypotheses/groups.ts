import { isOpen } from "../../meter/hobby-meter.ts";
import type { Fault } from "../fault.ts";
import { byScore, type Hypothesis, score } from "./hypothesis.ts";

/** Readings this near, in ln R, are the same: a hundredth of what a hobby meter can tell apart. */
const SAME_LOG_RATIO = 1e-4;
/** Guards that read less far apart than this, as chi-square, are not told apart by any readings of the kind given. */
const SAME_CHI_SQUARE = 1;
/** What was heard speaks no clearer than this, in nats, for one of two guards: people's words bear no more (no source). */
const SAME_LOG_SYMPTOMS = 1.5;
/** Further behind the best than this, in nats, an explanation is none. */
const HOPELESS = 30;
/** So many are looked at all the same, for want of better. */
const MIN_LOOKED_AT = 30;
/** Only in front is it worth working out whether tolerances make one reading of another. */
const IN_FRONT = 12;

/** Hypotheses that what was told cannot tell apart, the commonest cause first. */
export interface Group {
  readonly members: Hypothesis[];
  /** How much of the belief in all groups is this one's. */
  share: number;
}

function sameOhms(a: number, b: number): boolean {
  if (isOpen(a) || isOpen(b)) return isOpen(a) && isOpen(b);
  if (a === 0 || b === 0) return a === b;
  return Math.abs(Math.log(a / b)) < SAME_LOG_RATIO;
}

/** Whether two guards of nominal parts read the same wherever somebody measured. */
export function isSameReading(a: Hypothesis, b: Hypothesis): boolean {
  return a.prediction.ohms.every((ohms, index) => sameOhms(ohms, b.prediction.ohms[index]!));
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

/** A group's members without pairs of which one fault alone is a member: the other one changes nothing that was told. */
function withoutMore(members: readonly Hypothesis[]): Hypothesis[] {
  const name = ({ kind, lugs }: Fault) => `${kind} ${lugs}`;
  const alone = new Set(members.flatMap(({ faults }) => (faults.length === 1 ? [name(faults[0]!)] : [])));
  const isSound = members.some(({ faults }) => faults.length === 0);
  return members.filter(
    ({ faults }) => faults.length < 2 || !(isSound || faults.some((fault) => alone.has(name(fault)))),
  );
}

/** Whether a group accounts for every reading. */
export function explains({ members: [first] }: Group): boolean {
  return first!.explains;
}

/**
 * Groups hypotheses that what was told cannot tell apart: groups that account for every reading first, then the likelier.
 * @param separation how far apart two guards read, as chi-square
 */
export function groupEqual(
  hypotheses: readonly Hypothesis[],
  separation: (a: Hypothesis, b: Hypothesis) => number,
): Group[] {
  const all = withoutRepeats([...hypotheses].sort(byScore));
  const top = all.length === 0 ? 0 : score(all[0]!);
  const ordered = all.filter((each, index) => index < MIN_LOOKED_AT || score(each) > top - HOPELESS);
  const groups: { leader: Hypothesis; group: Group }[] = [];
  const isAlike = (leader: Hypothesis, other: Hypothesis) =>
    leader.explains === other.explains &&
    Math.abs(leader.logSymptoms - other.logSymptoms) < SAME_LOG_SYMPTOMS &&
    (isSameReading(leader, other) || (score(other) > top - IN_FRONT && separation(leader, other) < SAME_CHI_SQUARE));
  let total = 0;
  for (const hypothesis of ordered) {
    const weight = Math.exp(score(hypothesis) - top);
    total += weight;
    const found = groups.find(({ leader }) => isAlike(leader, hypothesis))?.group;
    if (found) {
      found.members.push(hypothesis);
      found.share += weight;
    } else groups.push({ leader: hypothesis, group: { members: [hypothesis], share: weight } });
  }
  for (const { group } of groups) {
    group.share /= total;
    const members = withoutMore(group.members).sort((a, b) => b.logPrior - a.logPrior);
    group.members.splice(0, group.members.length, ...members);
  }
  return groups
    .map(({ group }) => group)
    .sort((a, b) => Number(explains(b)) - Number(explains(a)) || b.share - a.share);
}

function firstExplains(groups: readonly Group[]): boolean {
  return groups[0] !== undefined && explains(groups[0]);
}

/** The groups that account for every reading; all of them where none does. */
export function tenable(groups: readonly Group[]): readonly Group[] {
  return firstExplains(groups) ? groups.filter(explains) : groups;
}
