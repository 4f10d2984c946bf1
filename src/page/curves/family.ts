import type { Features } from "../../response/features.ts";

/** A curve as it is drawn. */
export interface Trace {
  readonly name: string;
  /** What the build it belongs to is called, where that is another one. */
  readonly title?: string;
  /** In dB, at each of FREQUENCIES_HZ. */
  readonly magnitude: Float64Array;
  /** 0 … 1 along the family, for its shade. */
  readonly along: number;
}

/** A curve of which more is told than its line. */
export type FeaturedTrace = Trace & Features;

export interface Family {
  readonly current: FeaturedTrace;
  /** The curves behind; the one that coincides with the current setting is among them. */
  readonly behind: readonly Trace[];
}

/** What the curve of the build kept for comparison is called. */
export const OTHER_BUILD = "B";

/** The build kept for comparison has its features told, too. */
export function isOtherBuild(trace: Trace): trace is FeaturedTrace {
  return trace.name === OTHER_BUILD;
}
