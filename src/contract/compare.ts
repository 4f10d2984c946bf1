import * as z from "zod";
import { oneOf, strict } from "../build-file/zod-tools.ts";
import { AUDIBILITIES } from "../choice/compare/verdict.ts";
import { CHARACTERS } from "../choice/ear/character.ts";
import { THROUGH } from "../choice/ear/heard-sound.ts";
import { MAX_QUESTION_CHARS } from "../limits.ts";
import { featuresAnswer, settingsAnswer } from "./answer-fields.ts";
import { drawsField } from "./draws.ts";
import { buildField, playingFields, settingsField, sweepField, weightingField } from "./fields.ts";
import type { Answered, Sent } from "./wire.ts";

export const compareRequestSchema = strict({
  builds: z
    .array(buildField)
    .min(1)
    .max(2)
    .describe("two builds; or one build to be compared with itself in two settings"),
  settings: z
    .union([settingsField, z.tuple([settingsField, settingsField])])
    .optional()
    .describe("of both builds, or a list of two: the first build's and the second's"),
  sweep: sweepField.optional(),
  signal: weightingField.describe(
    "a built-in signal whose spectrum weighs the bands; left out: every ERB band the same, and the usual phrase for what is weighed",
  ),
  ...playingFields,
  through: oneOf(THROUGH)
    .default(THROUGH[0])
    .describe("what the strings are heard through for what is weighed: a 12-inch guitar speaker (default), or nothing"),
  question: z
    .string()
    .max(MAX_QUESTION_CHARS)
    .optional()
    .describe(
      "what is asked about the two, in words: the answer begins with the pickup or position that it speaks of first",
    ),
  tolerance: z
    .union([z.boolean(), drawsField])
    .optional()
    .describe(
      "whether to hold the difference against two guards built from the first's list; default true, with fewer guards the longer the sweep",
    ),
});

export const largestAnswer = z.object({
  difference: z.number().describe("dB"),
  frequency: z.number().describe("Hz, the band's middle"),
  band: z.tuple([z.number(), z.number()]),
});

const weighedAnswer = z
  .object({
    difference: z
      .array(z.number())
      .describe("dB per band of `bands`, second minus first, of excitation over masking, threshold and room"),
    largest: largestAnswer,
    rms: z.number().describe("dB over all bands"),
    loudnessDifference: z.number().describe("LU, second minus first, through the same"),
    character: z
      .enum(CHARACTERS)
      .nullable()
      .describe("what the second is; null where nothing differs or a side is silent"),
    humDifference: z.number().nullable().describe("dB, second minus first, equally loud; null where a side has none"),
  })
  .describe("what is heard to differ of the strings played, through `through`; 0 where a side is silent");

const rowAnswer = z.object({
  settings: z.tuple([settingsAnswer, settingsAnswer]),
  label: z.string(),
  loudnessDifference: z.number().describe("LU, second minus first (K-weighting of ITU-R BS.1770)"),
  difference: z
    .array(z.number().nullable())
    .describe("dB per band of `bands`, second minus first, loudness matched; null where too soft to be heard"),
  largest: largestAnswer,
  rms: z.number().describe("dB over the bands heard"),
  weighed: weighedAnswer,
  features: z.tuple([featuresAnswer, featuresAnswer]),
  peakShift: z
    .object({
      shiftHz: z.number().describe("second minus first"),
      jndHz: z
        .number()
        .describe(
          "just noticeable: 0.079·Fr/√Q, Gagné and Zurek 1988; no less than 1.5 %, Kewley-Port and Watson 1994",
        ),
      inJnd: z.number(),
      q: z.number().describe("of the blunter peak, from its height"),
      extrapolated: z.boolean().describe("outside 300–2000 Hz or Q 1–36, where it was measured"),
      bandwidth: z
        .number()
        .describe("fraction by which the second's is wider; 20 to 40 % are just noticeable, Stevens 1952, from memory"),
      decay: z
        .number()
        .describe(
          "fraction by which the second's dies away more slowly; 25 % less to 40 % more pass, Järveläinen and Tolonen 2001, from memory",
        ),
    })
    .nullable()
    .describe("null where either curve has no peak of Q 1 or more"),
  cutoffShift: z.number().nullable().describe("Hz, second minus first"),
  audible: z.enum(AUDIBILITIES).describe("of the largest difference weighed"),
  verdict: z.string(),
  tolerance: z
    .object({
      median: z.number().describe("dB; half of the pairs of guards from one list differ by no more"),
      high: z.number().describe("dB; 95 % of the pairs differ by no more"),
      exceeded: z.boolean(),
    })
    .nullable()
    .describe("of the largest difference weighed"),
});

export const compareAnswerSchema = z.object({
  weighting: z.string().describe("the signal, or flat"),
  bands: z.array(z.object({ low: z.number(), high: z.number(), centre: z.number() })).describe("ERB bands, Hz"),
  phrase: z.string().describe("what is played for what is weighed"),
  through: z.enum(THROUGH),
  rows: z.array(rowAnswer),
  order: z.array(z.int()).describe("numbers of the rows from 0, by what is weighed, the most different first"),
  answer: z.string().describe("one sentence: what was changed, where it is heard and by how much"),
  verdict: z.string().describe("the answer, the settings that differ most, and what tolerance does"),
  basis: z.string(),
  drawn: z
    .object({ draws: z.int(), seed: z.int() })
    .nullable()
    .describe("guards drawn for the tolerance; null where it was left out"),
});

export type CompareRequest = Sent<typeof compareRequestSchema>;
export type CompareBody = z.output<typeof compareRequestSchema>;
export type CompareAnswer = Answered<typeof compareAnswerSchema>;
