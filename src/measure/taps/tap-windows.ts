import { faultAt, type PresolderError } from "../../errors.ts";
import type { TapStep } from "./plan-taps.ts";
import type { Swing } from "./swings.ts";
import { groupOf, isTapping, type TapGroup, tapGroups } from "./tap-groups.ts";
import { EARLY_SECONDS, startOf } from "./tap-start.ts";

/** How it is told which taps belong to which step. */
export type TapTiming =
  /** By the pauses alone: every step must be heard, if faintly. */
  | { readonly by: "pauses" }
  /** Each step at its own time of the plan. @param start seconds of the take at which the first may begin; absent: found */
  | { readonly by: "plan"; readonly start?: number }
  /** Said by hand: seconds of the take at which each step's first tap is; null where none was to be heard. */
  | { readonly by: "hand"; readonly times: readonly (number | null)[] };

/** A tap that begins a step was written down to the nearest half second. */
const LATE_SECONDS = 0.9;
/** Shorter than this no pause on the way to the next row is. */
const LEAST_PAUSE_SECONDS = 0.5;

const shown = (seconds: number) => seconds.toFixed(1);

const listOf = (groups: readonly TapGroup[]) =>
  groups.map(({ from, swings }) => `${shown(from)} s (${swings.length} swings)`).join(", ") || "none";

function countFault(path: string, groups: readonly TapGroup[], steps: number): PresolderError {
  const message =
    `${groups.length} groups of taps were found, at ${listOf(groups)}; the plan has ${steps} steps. Where a row is silent nothing is ` +
    "heard of it: keep to the plan's times while you tap, or say in `times` when each step began, null for what is not to be heard";
  return faultAt("DATA_INSUFFICIENT", path, message);
}

function unpausedFault(path: string, seconds: number, step: number): PresolderError {
  const message =
    `the taps about ${shown(seconds)} s have no pause where step ${step + 1} begins; tap in time with the plan, or say in \`times\` ` +
    "when each step began";
  return faultAt("DATA_INSUFFICIENT", path, message);
}

/** The middle of the longest pause about the time at which a step begins. */
function boundaryAt(path: string, swings: readonly Swing[], begins: number, step: number): number {
  const [from, to] = [begins - EARLY_SECONDS, begins + LATE_SECONDS];
  const before = swings.findLast(({ at }) => at < from)?.at ?? Number.NEGATIVE_INFINITY;
  const after = swings.find(({ at }) => at >= to)?.at ?? Number.POSITIVE_INFINITY;
  const marks = [before, ...swings.filter(({ at }) => at >= from && at < to).map(({ at }) => at), after];
  const pauses = marks.slice(1).map((mark, i) => ({ from: Math.max(marks[i]!, from - 1), to: Math.min(mark, to + 1) }));
  const longest = pauses.reduce((best, each) => (each.to - each.from > best.to - best.from ? each : best));
  if (longest.to - longest.from < LEAST_PAUSE_SECONDS) throw unpausedFault(path, begins, step);
  return (longest.from + longest.to) / 2;
}

/** The group of each step, by the times at which steps begin. */
function byTimes(path: string, swings: readonly Swing[], begins: readonly (number | null)[]): (TapGroup | undefined)[] {
  const boundaries = begins.map((at, i) => (at === null ? null : boundaryAt(path, swings, at, i)));
  return boundaries.map((from, i) => {
    if (from === null) return undefined;
    const to = boundaries.slice(i + 1).find((each) => each !== null) ?? Number.POSITIVE_INFINITY;
    const within = swings.filter(({ at }) => at >= from && at < to);
    if (within.length === 0) return undefined;
    const group = groupOf(within);
    return isTapping(group) ? group : undefined;
  });
}

/**
 * The group of taps that each step of the plan made; undefined where none was heard.
 * @throws DATA_INSUFFICIENT under `path` with the groups found, where they cannot be told apart by what was said
 */
export function tapWindows(
  path: string,
  swings: readonly Swing[],
  steps: readonly TapStep[],
  timing: TapTiming,
): (TapGroup | undefined)[] {
  const groups = tapGroups(swings);
  // Where it is known when each row was tapped, a guard that is silent throughout is an answer.
  const isTimed = timing.by === "hand" || (timing.by === "plan" && timing.start !== undefined);
  if (groups.length === 0 && !isTimed) throw countFault(path, groups, steps.length);
  if (timing.by === "hand") return byTimes(path, swings, timing.times);
  const start = timing.by === "plan" ? (timing.start ?? startOf(groups, steps)) : undefined;
  if (start !== undefined) {
    return byTimes(
      path,
      swings,
      steps.map(({ at }) => start + at),
    );
  }
  if (groups.length !== steps.length) throw countFault(path, groups, steps.length);
  return groups;
}
