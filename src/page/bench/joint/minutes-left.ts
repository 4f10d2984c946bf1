import type { SheetJoint } from "../../drawing/joint/schedule.ts";

/** Minutes to cut, strip, place, heat and look at: common practice, no source. Slow hands take twice as long. */
const MINUTES = { lug: 1.5, case: 3, splice: 3, claw: 4 } as const;
const MINUTES_FURTHER_END = 0.75;
/** A round figure is all that this is worth. */
const STEP = 5;

/** About how long some joints take, in minutes: to the next five, and single ones below that. */
export function minutesFor(joints: readonly SheetJoint[]): number {
  const minutes = joints.reduce(
    (sum, { heat, ends }) => sum + MINUTES[heat.heated] + MINUTES_FURTHER_END * (ends.length - 1),
    0,
  );
  return minutes < STEP ? Math.ceil(minutes) : Math.ceil(minutes / STEP) * STEP;
}
