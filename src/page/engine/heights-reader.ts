import "./zod-without-eval.ts";
import { stringLevels } from "../../audio/string-levels/string-levels.ts";
import type { StringLevelsQuestion } from "../../audio/string-levels/usable-plucks.ts";
import { decodeWav } from "../../audio/wav-decode.ts";
import { heightsOf } from "../../bench/heights/heights.ts";
import type { HeightsTold } from "../../bench/heights/heights-told.ts";
import { readHeights } from "../../bench/heights/question.ts";
import { heightsBodySchema } from "../../bench/heights/request-shape.ts";
import type { Build } from "../../build-file/schema.ts";
import { parseOrThrow } from "../../build-file/zod-tools.ts";
import type { HeightsAsked } from "../../contract/bench/heights.ts";
import { type InputFault, PresolderError } from "../../errors.ts";

/** An answer, or a refusal with its faults, which an error loses on its way between threads. */
export type Replied<Answer> =
  | { readonly answer: Answer }
  | { readonly refusal: string; readonly faults: readonly InputFault[] };

function replied<Answer>(ask: () => Answer): Replied<Answer> {
  try {
    return { answer: ask() };
  } catch (error) {
    if (!(error instanceof PresolderError)) throw error;
    return { refusal: error.message, faults: error.faults };
  }
}

/** What the service answers about heights, worked out in the browser. */
export function turnsTold(build: Build, asked: HeightsAsked): Replied<HeightsTold> {
  return replied(() => heightsOf(readHeights(build, parseOrThrow(heightsBodySchema, asked, "REQUEST_INVALID"))));
}

/** Levels from string 1 of a recording of one position. */
export function levelsTold(file: Uint8Array, question: StringLevelsQuestion): Replied<readonly number[]> {
  return replied(() => stringLevels(decodeWav(file), question).strings.map(({ level }) => level));
}
