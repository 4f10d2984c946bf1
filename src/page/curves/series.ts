import { type Family, isOtherBuild, type Trace } from "./family.ts";

export interface SeriesLook {
  readonly width: number;
  readonly dash?: readonly number[];
}

function lookOf(trace: Trace): SeriesLook {
  return isOtherBuild(trace) ? { width: 2, dash: [8, 5] } : { width: 1.25 };
}

const CURRENT: SeriesLook = { width: 3 };

/** Widths and dashes of a family in the order they are drawn, the current curve last; only the other guard is dashed. */
export function seriesLooks({ behind }: Family): SeriesLook[] {
  return [...behind.map(lookOf), CURRENT];
}

/** Whether two families can be drawn by the same series. */
export function looksAlike(one: Family, other: Family): boolean {
  const names = ({ behind }: Family) => behind.map(({ name }) => name).join();
  return names(one) === names(other);
}
