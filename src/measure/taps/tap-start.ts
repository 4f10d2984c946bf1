import { STEP_SECONDS, type TapStep } from "./plan-taps.ts";
import type { TapGroup } from "./tap-groups.ts";

/** A hand strays by so much from a step's time. */
export const EARLY_SECONDS = 1.2;

/** A group at a time at which no row is tapped weighs as much as two rows that sound otherwise than drawn. */
const MISPLACED = 2;

/** How far heard groups are from a plan of taps that begins at `start`: rows otherwise than drawn, and groups of no row. */
function misfit(groups: readonly TapGroup[], steps: readonly TapStep[], start: number): number {
  const heard = steps.map(({ at }) => {
    const begins = start + at - EARLY_SECONDS;
    return groups.filter(({ from }) => from >= begins && from < begins + STEP_SECONDS).length;
  });
  const placed = heard.reduce((sum, count) => sum + Math.min(1, count), 0);
  const otherwise = steps.filter(({ sounds }, i) => sounds !== heard[i]! > 0).length;
  return otherwise + MISPLACED * (groups.length - placed);
}

/**
 * Seconds of a take at which the first step of its plan began: the first group heard is the step's that lets the rest fit the plan and
 * the drawing best. A row that is silent leaves nothing behind, the first like any other.
 */
export function startOf(groups: readonly TapGroup[], steps: readonly TapStep[]): number {
  const starts = steps.map(({ at }) => groups[0]!.from - at);
  const misfits = starts.map((start) => misfit(groups, steps, start));
  return starts[misfits.indexOf(Math.min(...misfits))]!;
}
