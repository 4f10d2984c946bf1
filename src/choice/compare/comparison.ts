import { THROUGH, type Through } from "../ear/heard-sound.ts";
import type { Band } from "../erb.ts";
import { SLICES } from "../slices.ts";
import { answerBetween } from "./answer-between.ts";
import type { ComparisonRow, Side } from "./comparison-row.ts";
import { type HearingOptions, heardRows } from "./heard-rows.ts";
import { VERDICT_BASIS } from "./verdict-basis.ts";
import { countWords, listingWords, toleranceWords } from "./words/listing.ts";
import { byDifference } from "./words/places.ts";
import { rowVerdictWords } from "./words/row-words.ts";

export interface Comparison {
  readonly weighting: string;
  /** What is played for what is weighed, and what it is heard through. */
  readonly phrase: string;
  readonly through: Through;
  readonly bands: readonly Band[];
  readonly rows: readonly ComparisonRow[];
  /** Numbers of the rows, the most different first, as they are heard. */
  readonly order: readonly number[];
  /** The answer to what was changed, in one sentence. */
  readonly answer: string;
  /** The answer, the settings that differ most, in how many anything is heard, and what tolerance does. */
  readonly verdict: string;
  readonly basis: string;
}

/**
 * Compares two guards, row by row of their settings.
 * The plain differences are level matched, second minus first, per ERB band, weighted by the drive's spectrum within each band; the
 * weighed ones are those that are heard of the strings played.
 */
export function comparisonOf(a: Side, b: Side, options: HearingOptions = {}): Comparison {
  const heard = heardRows(a, b, options);
  const { answer, places } = answerBetween(a, b, heard, options.question);
  const own = heard.length === 1 ? rowVerdictWords(heard[0]!) : "";
  return {
    weighting: a.drive.name,
    phrase: (a.played ?? a.drive).name,
    through: options.through ?? THROUGH[0],
    bands: SLICES.bands,
    rows: heard.map(({ row }) => row),
    order: byDifference(heard).map((row) => heard.indexOf(row)),
    answer,
    verdict: `${answer}${own}${listingWords(heard, places)}${countWords(heard)}${toleranceWords(heard)}`,
    basis: VERDICT_BASIS,
  };
}
