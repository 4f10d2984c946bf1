import { SILENCE_DB } from "../../decibels.ts";
import { REFERENCE_HZ } from "../../response/features.ts";
import type { LevelView } from "../state/app-state.ts";
import type { Family, Trace } from "./family.ts";
import { FREQUENCIES_HZ } from "./frequencies.ts";

const above = FREQUENCIES_HZ.findIndex((frequency) => frequency >= REFERENCE_HZ);

/** The level at the reference frequency, between the two nearest points of the grid, in dB. */
export function referenceLevelDb(magnitude: ArrayLike<number>): number {
  const [f0, f1] = [FREQUENCIES_HZ[above - 1]!, FREQUENCIES_HZ[above]!];
  const share = Math.log(REFERENCE_HZ / f0) / Math.log(f1 / f0);
  return magnitude[above - 1]! * (1 - share) + magnitude[above]! * share;
}

/** Whether a curve is that of no sound at all. */
export function isSilent(magnitude: Float64Array): boolean {
  return magnitude.every((level) => level <= SILENCE_DB);
}

/** Levels as shown: true, or over the level at 200 Hz. */
export function shownLevels(trace: Trace, view: LevelView): Float64Array {
  const offset = view === "true" ? 0 : referenceLevelDb(trace.magnitude);
  return trace.magnitude.map((level) => level - offset);
}

/** What the axis of such levels is called. */
export function levelWords(view: LevelView): string {
  return view === "true" ? "level, dB" : "level over 200 Hz, dB";
}

const STEP_DB = 6;
const MAX_SPAN_DB = 48;
const MIN_SPAN_DB = 24;

/** A vertical range in whole steps of 6 dB that holds what matters of every curve and stays put under small changes. */
export function levelRangeDb(levels: readonly ArrayLike<number>[]): [low: number, high: number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const list of levels) {
    for (let i = 0; i < list.length; i++) {
      low = Math.min(low, list[i]!);
      high = Math.max(high, list[i]!);
    }
  }
  if (!(high >= low)) return [-36, 12];
  const top = Math.ceil((high + 1) / STEP_DB) * STEP_DB;
  const bottom = Math.floor((low - 1) / STEP_DB) * STEP_DB;
  return [Math.max(top - MAX_SPAN_DB, Math.min(bottom, top - MIN_SPAN_DB)), top];
}

export function allLevels(family: Family, view: LevelView): Float64Array[] {
  return [...family.behind, family.current].map((trace) => shownLevels(trace, view));
}
