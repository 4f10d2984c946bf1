import type { Range } from "../figures.ts";

/** A word of the trade as something that can be measured. */
export interface TradeWord {
  /** Other ways to say it, lower case. */
  readonly also: readonly string[];
  /** What is meant, for a person. */
  readonly meaning: string;
  readonly targets: readonly Range[];
  /** Where the meaning and its numbers come from. */
  readonly source: string;
}
