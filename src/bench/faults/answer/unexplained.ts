import { listed } from "../../../english.ts";
import { isJoint } from "../../meter/hobby-meter.ts";
import type { ReadingPlan } from "../../meter/reading-plan.ts";
import type { Group } from "../hypotheses/groups.ts";
import { METER_DEVIATIONS } from "../likelihood/likelihood.ts";
import type { Observation } from "../likelihood/observation.ts";
import { planKey } from "../next/next-measurement.ts";
import { OUTSIDE_SHARE } from "../priors/fault-shares.ts";
import type { Explanation } from "./explanations.ts";
import { ohmsText } from "./reading-words.ts";

/** At most so many readings are named in a message. */
const MAX_NAMED = 4;

function contradict(a: Observation, b: Observation): boolean {
  const slack = METER_DEVIATIONS * Math.max(a.logError, b.logError);
  if (a.below !== undefined || b.below !== undefined) {
    const most = Math.min(a.below ?? Number.POSITIVE_INFINITY, b.below ?? Number.POSITIVE_INFINITY) * (1 + slack);
    return Math.max(a.above ?? a.ohms, b.above ?? b.ohms) > most;
  }
  if (a.above !== undefined || b.above !== undefined) {
    const least = Math.max(a.above ?? 0, b.above ?? 0) * (1 - slack);
    return Math.min(a.ohms, b.ohms) < least;
  }
  const [openA, openB] = [a.ohms, b.ohms].map((ohms) => ohms === Number.POSITIVE_INFINITY);
  if (openA || openB) return openA !== openB;
  if (isJoint(a.ohms) || isJoint(b.ohms)) return isJoint(a.ohms) !== isJoint(b.ohms);
  return Math.abs(Math.log(a.ohms / b.ohms)) > METER_DEVIATIONS * Math.hypot(a.logError, b.logError);
}

/** Readings, by index, that ask the same of the meter and show what cannot both be. */
export function contradictions(
  plans: readonly ReadingPlan[],
  observations: readonly Observation[],
): readonly (readonly [number, number])[] {
  const first = new Map<string, number>();
  return plans.flatMap((plan, index) => {
    const key = planKey(plan);
    const earlier = first.get(key);
    if (earlier === undefined) first.set(key, index);
    else if (contradict(observations[earlier]!, observations[index]!)) return [[earlier, index] as const];
    return [];
  });
}

/** Which readings the best that was found leaves over, or the one that fits it worst. */
function oddReadings([best]: readonly Group[]): readonly number[] {
  const evidence = best?.members[0]?.evidence;
  if (!evidence) return [];
  if (evidence.missed.length > 0) return evidence.missed;
  return evidence.oddest < 0 ? [] : [evidence.oddest];
}

function advice(plans: readonly ReadingPlan[], observations: readonly Observation[], groups: readonly Group[]): string {
  const clashes = contradictions(plans, observations);
  const shown = (index: number) => ohmsText(observations[index]!);
  if (clashes.length > 0) {
    const named = clashes.slice(0, MAX_NAMED).map(([a, b]) => `${plans[a]!.label} (${shown(a)}, then ${shown(b)})`);
    return `These ask the same of the meter and contradict each other: ${named.join("; ")}. Measure again there.`;
  }
  const odd = oddReadings(groups)
    .slice(0, MAX_NAMED)
    .map((index) => `${plans[index]!.label} (${shown(index)})`);
  return odd.length === 0 ? "Measure again." : `Measure again, the oddest first: ${listed(odd)}.`;
}

/** What is answered first where nothing that was weighed accounts for every reading. */
export function unexplained(
  plans: readonly ReadingPlan[],
  observations: readonly Observation[],
  groups: readonly Group[],
): Explanation {
  const message = `Nothing that can be wrong with this wiring accounts for all of these readings. ${advice(plans, observations, groups)} If they stay as they are, two things or more are wrong, or the guard is not wired as the build file says.`;
  return {
    faults: [{ kind: "unexplained", lugs: [] }],
    message,
    fit: 0,
    probability: 0,
    predicted: [],
    sameAs: [],
    prior: OUTSIDE_SHARE,
    alike: "",
  };
}

/** What is answered where nothing was measured and nothing told. */
export const NOTHING_MEASURED: Explanation = {
  faults: [{ kind: "nothing-measured", lugs: [] }],
  message: "Nothing is measured yet, so nothing can be said. Begin with the measurement below.",
  fit: 0,
  probability: 0,
  predicted: [],
  sameAs: [],
  prior: 0,
  alike: "",
};
