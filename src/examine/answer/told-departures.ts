import { alternative, kindsIn } from "../../bench/faults/answer/explanations.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Named } from "../weigh/candidates.ts";
import type { Group } from "../weigh/groups.ts";
import { sortsOf } from "./sorts.ts";
import { fitOf, nextFor, probabilityOf, titleFor } from "./verdict.ts";

const MOST_TOLD = 8;
const LEAST_SHARE = 1e-4;
/** Beside a departure, and beside the drawing, where the rest is told by sort. */
const MOST_ALIKE = { departure: 40, drawing: 8 } as const;

/** Which of the answers are told. */
export const toldOf = (groups: readonly Group[]): readonly Group[] =>
  groups.filter(({ share }, index) => index < 3 || (index < MOST_TOLD && share > LEAST_SHARE));

/** The guard as drawn first where it is among a group's names. */
function namesOf({ names, isSound }: Group): readonly Named[] {
  return isSound ? [...names].sort((a, b) => a.faults.length - b.faults.length) : names;
}

/**
 * One answer, told.
 * @param best of all answers, the likeliest
 * @param shownBy what would show departures that these takes do not tell apart
 */
export function departureOf(
  build: Build,
  group: Group,
  best: Group,
  shownBy: (members: readonly Named[]) => string | null,
) {
  const [first, ...others] = namesOf(group);
  return {
    ...alternative(first!),
    title: titleFor(build, group),
    next: nextFor(group),
    probability: probabilityOf(group, best),
    fit: fitOf(group),
    sameAs: others.slice(0, MOST_ALIKE[group.isSound ? "drawing" : "departure"]).map(alternative),
    alike: kindsIn(others),
    sorts: sortsOf(others, shownBy),
  };
}
