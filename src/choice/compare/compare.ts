import { curveFor } from "../guard.ts";
import type { DrawOptions } from "../tolerance/draws.ts";
import { pairSpreads } from "../tolerance/pair-spreads.ts";
import { type Comparison, comparisonOf } from "./comparison.ts";
import type { Side } from "./comparison-row.ts";
import type { HearingOptions } from "./heard-rows.ts";

export type { Comparison } from "./comparison.ts";
export type { ComparisonRow, Side } from "./comparison-row.ts";

/**
 * Compares two guards, and holds the difference against what two guards built from the first's list differ by.
 * @param tolerance how many guards to draw from that list, or null to leave tolerance out
 */
export function compare(
  a: Side,
  b: Side,
  tolerance: DrawOptions | null,
  { through = "speaker", question = "" }: Omit<HearingOptions, "pairs"> = {},
): Comparison {
  if (!tolerance) return comparisonOf(a, b, { through, question });
  const pairs = pairSpreads(a.guard, a.settings, a.played ?? a.drive, { ...tolerance, through });
  return comparisonOf(a, b, { through, question, pairs });
}

/** Both curves of one row in dB, for drawing. */
export function curvesOfRow(
  a: Side,
  b: Side,
  index: number,
  frequenciesHz: Float64Array,
): [Float64Array, Float64Array] {
  return [
    curveFor(a.guard.transfers(a.settings[index]!), frequenciesHz),
    curveFor(b.guard.transfers(b.settings[index]!), frequenciesHz),
  ];
}
