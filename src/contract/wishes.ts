import * as z from "zod";
import { strict } from "../build-file/zod-tools.ts";
import { FIGURE_NAMES } from "../choice/wanted/figures.ts";
import { WORD_NAMES } from "../choice/wanted/vocabulary/words.ts";
import { understoodAnswer, wishesTextField } from "./wanted.ts";
import type { Answered, Sent } from "./wire.ts";

export const wishesRequestSchema = strict({ text: wishesTextField });

const range = z.object({ figure: z.enum(FIGURE_NAMES), low: z.number().optional(), high: z.number().optional() });

export const wishesAnswerSchema = understoodAnswer.extend({
  words: z
    .array(
      z.object({
        word: z.enum(WORD_NAMES),
        also: z.array(z.string()),
        meaning: z.string(),
        targets: z.array(range),
        source: z.string(),
      }),
    )
    .describe("every word that is known, and what it is measured by"),
  figures: z.array(
    z.object({
      figure: z.enum(FIGURE_NAMES),
      title: z.string(),
      unit: z.string(),
      meaning: z.string(),
      step: z.number().describe("what counts as one step off: octaves where `by` says so, else in its unit"),
      by: z.enum(["octaves", "difference"]),
    }),
  ),
});

export type WishesRequest = Sent<typeof wishesRequestSchema>;
export type WishesBody = z.output<typeof wishesRequestSchema>;
export type WishesAnswer = Answered<typeof wishesAnswerSchema>;
