import { partWords } from "../../build-file/words/part-words.ts";
import { THROUGH, type Through } from "../ear/heard-sound.ts";
import type { Band } from "../erb.ts";
import { curveFor } from "../guard.ts";
import { SLICES } from "../slices.ts";
import type { DrawOptions } from "../tolerance/draws.ts";
import { pairSpreads } from "../tolerance/pair-spreads.ts";
import { type Change, changesBetween } from "./changes/changes.ts";
import { settingChanges } from "./changes/setting-changes.ts";
import type { ComparisonRow, HeardRow, Side } from "./comparison-row.ts";
import { compareRow } from "./row.ts";
import { VERDICT_BASIS } from "./verdict.ts";
import { answerWords } from "./words/answer.ts";
import { axesOf, tellingAxis } from "./words/axes.ts";
import { keepingWords } from "./words/keeping.ts";
import { countWords, listingWords, toleranceWords } from "./words/listing.ts";
import { byDifference, Places } from "./words/places.ts";
import { rowVerdictWords } from "./words/row-words.ts";

export type { ComparisonRow, Side } from "./comparison-row.ts";

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

function wordsFor(a: Side, b: Side, heard: readonly HeardRow[]): Pick<Comparison, "answer" | "verdict"> {
  const words = partWords(a.guard.build.parts);
  const rows = heard.map(({ row }) => row);
  const changes: Change[] = [
    ...changesBetween(a.guard.build, b.guard.build),
    ...settingChanges(rows, a.guard.controls, words),
  ];
  const axes = axesOf(heard, a.guard.controls, words);
  const isOfPickups = changes.length > 0 && changes.every((change) => change.isOfPickups);
  const axis = tellingAxis(axes, heard, isOfPickups);
  const places = new Places(heard, [a, b], axes, axis);
  const answer = `${answerWords(changes, heard, places, keepingWords(changes, heard, axis))}.`;
  const own = heard.length === 1 ? rowVerdictWords(heard[0]!) : "";
  const verdict = `${answer}${own}${listingWords(heard, places)}${countWords(heard)}${toleranceWords(heard)}`;
  return { answer, verdict };
}

/**
 * Compares two guards, row by row of their settings.
 * The plain differences are level matched, second minus first, per ERB band, weighted by the drive's spectrum within each band; the
 * weighed ones are those that are heard of the strings played.
 * @param tolerance how many guards to draw from the first's list, or null to leave tolerance out
 */
export function compare(a: Side, b: Side, tolerance: DrawOptions | null, through: Through = THROUGH[0]): Comparison {
  const played = a.played ?? a.drive;
  const pairs = tolerance ? pairSpreads(a.guard, a.settings, played, { ...tolerance, through }) : [];
  const heard = a.settings.map((_, index) => compareRow([a, b], index, pairs[index], through));
  return {
    weighting: a.drive.name,
    phrase: played.name,
    through,
    bands: SLICES.bands,
    rows: heard.map(({ row }) => row),
    order: byDifference(heard).map((row) => heard.indexOf(row)),
    ...wordsFor(a, b, heard),
    basis: VERDICT_BASIS,
  };
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
