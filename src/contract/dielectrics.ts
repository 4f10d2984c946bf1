import * as z from "zod";
import { DIELECTRIC_NAMES } from "../build-file/catalogue/dielectrics.ts";
import { strict } from "../build-file/zod-tools.ts";
import { AUDIBILITIES } from "../choice/compare/verdict.ts";
import { MAX_ASKED_CAPS, MAX_NAME_CHARS } from "../limits.ts";
import { settingsAnswer } from "./answer-fields.ts";
import { buildField, playingFields, settingsField, weightingField } from "./fields.ts";
import type { Answered, Sent } from "./wire.ts";

export const dielectricsRequestSchema = strict({
  build: buildField,
  caps: z
    .array(z.string().min(1).max(MAX_NAME_CHARS))
    .min(1)
    .max(MAX_ASKED_CAPS)
    .optional()
    .describe("names of caps; left out: those of the tone controls, or all where there are none"),
  settings: settingsField
    .optional()
    .describe("what the controls stand at that are not swept; every position and tone 0 to 10 are"),
  signal: weightingField,
  ...playingFields,
});

const differenceFields = {
  difference: z
    .number()
    .describe(
      "dB in the band where it is largest, as it is heard through a 12-inch guitar speaker, loudness matched, over a cap without loss",
    ),
  frequency: z.number().describe("Hz, the band's middle"),
  settings: settingsAnswer,
  label: z.string(),
  peakShift: z.number().nullable().describe("Hz; null where there is no peak"),
  audible: z.enum(AUDIBILITIES),
};

const atWorst = {
  ...differenceFields,
  within: z.tuple([z.number(), z.number()]).describe("fractions under and over the value marked"),
  off: z.number().describe("the end that differs more"),
};

const rowAnswer = z.object({
  dielectric: z.enum(DIELECTRIC_NAMES),
  title: z.string(),
  loss: z.tuple([z.number(), z.number()]).describe("tan δ at 1 kHz and 10 kHz"),
  measured: z.object(differenceFields).describe("both caps of the same measured value"),
  marked: z.object(atWorst).describe("at the worse end of its usual tolerance"),
  changed: z.object(atWorst).describe("at the worse end of what 10 to 35 °C and eleven years may do to it"),
});

export const dielectricsAnswerSchema = z.object({
  answer: z.string().describe("whether it matters what the caps are made of"),
  caps: z.array(
    z.object({
      cap: z.string(),
      capacitance: z.number().describe("F"),
      settings: z.int().describe("in how many it was looked at; every figure is the largest of them"),
      says: z.string(),
      rows: z.array(rowAnswer),
    }),
  ),
  weighting: z.string().describe("the signal, or flat"),
  basis: z.string(),
});

export type DielectricsRequest = Sent<typeof dielectricsRequestSchema>;
export type DielectricsBody = z.output<typeof dielectricsRequestSchema>;
export type DielectricsAnswer = Answered<typeof dielectricsAnswerSchema>;
