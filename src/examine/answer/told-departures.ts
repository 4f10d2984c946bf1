import { alternative, kindsIn } from "../../bench/faults/answer/explanations.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Named } from "../weigh/candidates.ts";
import type { Group } from "../weigh/groups.ts";
import { fitOf, nextFor, probabilityOf, titleFor } from "./verdict.ts";

const MOST_TOLD = 8;
const LEAST_SHARE = 1e-4;
const MOST_ALIKE = 40;

/** Which of the answers are told. */
export const toldOf = (groups: readonly Group[]): readonly Group[] =>
  groups.filter(({ share }, index) => index < 3 || (index < MOST_TOLD && share > LEAST_SHARE));

/** The guard as drawn first where it is among a group's names. */
function namesOf({ names, isSound }: Group): readonly Named[] {
  return isSound ? [...names].sort((a, b) => a.faults.length - b.faults.length) : names;
}

/** One answer, told. @param best of all answers, the likeliest */
export function departureOf(build: Build, group: Group, best: Group) {
  const [first, ...others] = namesOf(group);
  return {
    ...alternative(first!),
    title: titleFor(build, group),
    next: nextFor(group),
    probability: probabilityOf(group, best),
    fit: fitOf(group),
    sameAs: others.slice(0, MOST_ALIKE).map(alternative),
    alike: kindsIn(others),
  };
}
