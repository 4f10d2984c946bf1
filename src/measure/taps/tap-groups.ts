import type { Swing } from "./swings.ts";
import { medianOf } from "./without-hum.ts";

/** Longer than between two taps on one row, shorter than the way to the next. */
const PAUSE_SECONDS = 1.1;
/** What is further under its group's loudest is a bounce, or hum that came with the hand. */
const LOWEST_OF_GROUP = 0.16;

/** So much of the loudest is a tap, however it looks. */
const LOUD = 0.5;
/** One swing alone is no tap: a lever, a knock, a plug. */
const LEAST_SWINGS = 2;

/** A lever's contacts are all done by then. */
const LEAST_SECONDS = 0.12;
/** Taps by one hand on one row are about as sharp as each other; a contact among them is this much sharper. */
const SHARPER = 2.5;

/** Swings with no pause between them. */
export interface TapGroup {
  readonly from: number;
  readonly to: number;
  readonly swings: readonly Swing[];
}

export const isTapping = ({ from, to, swings }: TapGroup): boolean =>
  swings.length >= LEAST_SWINGS && to - from >= LEAST_SECONDS;

export function groupOf(swings: readonly Swing[]): TapGroup {
  const loudest = swings.reduce((most, { size }) => Math.max(most, size), 0);
  const usual = medianOf(swings.filter(({ size }) => size >= LOUD * loudest).map(({ sharpness }) => sharpness));
  const kept = swings.filter(
    ({ size, sharpness }) =>
      size >= LOUD * loudest || (size >= LOWEST_OF_GROUP * loudest && sharpness < SHARPER * usual),
  );
  return { from: kept[0]!.at, to: kept.at(-1)!.at, swings: kept };
}

/** The swings between the pauses. */
export function tapGroups(swings: readonly Swing[]): TapGroup[] {
  const groups: Swing[][] = [];
  for (const swing of swings) {
    const last = groups.at(-1);
    if (last && swing.at - last.at(-1)!.at < PAUSE_SECONDS) last.push(swing);
    else groups.push([swing]);
  }
  return groups.map(groupOf).filter(isTapping);
}
