import { partWords } from "../../build-file/words/part-words.ts";
import { changesBetween } from "./changes/changes.ts";
import { settingChanges } from "./changes/setting-changes.ts";
import type { HeardRow, Side } from "./comparison-row.ts";
import { answerWords } from "./words/answer.ts";
import { axesOf, tellingAxis } from "./words/axes.ts";
import { keepingWords } from "./words/keeping.ts";
import { Places } from "./words/places.ts";

/** The answer to a question that was put in words, or to none: what the second side has otherwise and where it is heard, in one sentence, and how it names settings. */
export function answerBetween(
  a: Side,
  b: Side,
  heard: readonly HeardRow[],
  question = "",
): { answer: string; places: Places } {
  const words = partWords(a.guard.build.parts);
  const changes = [
    ...changesBetween(a.guard.build, b.guard.build),
    ...settingChanges(
      heard.map(({ row }) => row),
      a.guard.controls,
      words,
    ),
  ];
  const axes = axesOf(heard, a.guard.controls, words);
  const isOfPickups = changes.length > 0 && changes.every((change) => change.isOfPickups);
  const axis = tellingAxis(axes, heard, isOfPickups);
  const places = new Places(heard, [a, b], axes, axis, question);
  return { answer: `${answerWords(changes, heard, places, keepingWords(changes, heard, axis))}.`, places };
}
