import { THROUGH, type Through } from "../ear/heard-sound.ts";
import type { PairSpread } from "../tolerance/pair-spreads.ts";
import type { HeardRow, Side } from "./comparison-row.ts";
import { compareRow } from "./row.ts";

export interface HearingOptions {
  readonly through?: Through;
  /** What somebody asks about the two, in words. */
  readonly question?: string;
  /** Row by row, what two guards built from the first's list differ by; left out where tolerance is not asked for. */
  readonly pairs?: readonly PairSpread[];
}

/** Two guards row by row, without an answer in words. */
export function heardRows(a: Side, b: Side, { through = THROUGH[0], pairs = [] }: HearingOptions = {}): HeardRow[] {
  return a.settings.map((_, index) => compareRow([a, b], index, pairs[index], through));
}
