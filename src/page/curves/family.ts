import type { Features } from "../../response/features.ts";

/** A curve as it is drawn: magnitude in dB at each of FREQUENCIES_HZ. */
export interface DrawnCurve extends Features {
  readonly magnitude: Float64Array;
}

export interface Trace {
  readonly name: string;
  /** What the build it belongs to is called, where that is another one. */
  readonly title?: string;
  readonly curve: DrawnCurve;
  /** 0 … 1 along the family, for its shade. */
  readonly along: number;
}

export interface Family {
  readonly current: Trace;
  /** The curves behind; the one that coincides with the current setting is among them. */
  readonly behind: readonly Trace[];
}

/** What the curve of the build kept for comparison is called. */
export const OTHER_BUILD = "B";

export function isOtherBuild({ name }: Trace): boolean {
  return name === OTHER_BUILD;
}
