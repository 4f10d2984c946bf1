import * as z from "zod";
import { strict } from "../build-file/zod-tools.ts";
import { AUDIBILITIES } from "../choice/compare/verdict.ts";
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
  signal: weightingField,
  ...playingFields,
  tolerance: z
    .union([z.boolean(), drawsField])
    .optional()
    .describe(
      "whether to hold the difference against two guards built from the first's list; default true, with fewer guards the longer the sweep",
    ),
});

const rowAnswer = z.object({
  settings: z.tuple([settingsAnswer, settingsAnswer]),
  label: z.string(),
  loudnessDifference: z.number().describe("LU, second minus first (K-weighting of ITU-R BS.1770)"),
  difference: z
    .array(z.number().nullable())
    .describe("dB per band of `bands`, second minus first, loudness matched; null where too soft to be heard"),
  largest: z.object({
    difference: z.number().describe("dB"),
    frequency: z.number().describe("Hz, the band's middle"),
    band: z.tuple([z.number(), z.number()]),
  }),
  rms: z.number().describe("dB over the bands heard"),
  features: z.tuple([featuresAnswer, featuresAnswer]),
  peakShift: z
    .object({
      shiftHz: z.number().describe("second minus first"),
      jndHz: z.number().describe("just noticeable: 0.079·Fr/√Q, Gagné and Zurek 1988"),
      inJnd: z.number(),
      q: z.number().describe("of the blunter peak, from its height"),
      extrapolated: z.boolean().describe("outside 300–2000 Hz or Q 1–36, where it was measured"),
    })
    .nullable(),
  cutoffShift: z.number().nullable().describe("Hz, second minus first"),
  audible: z.enum(AUDIBILITIES),
  verdict: z.string(),
  tolerance: z
    .object({
      median: z.number().describe("dB; half of the pairs of guards from one list differ by no more"),
      high: z.number().describe("dB; 95 % of the pairs differ by no more"),
      exceeded: z.boolean(),
    })
    .nullable(),
});

export const compareAnswerSchema = z.object({
  weighting: z.string().describe("the signal, or flat"),
  bands: z.array(z.object({ low: z.number(), high: z.number(), centre: z.number() })).describe("ERB bands, Hz"),
  rows: z.array(rowAnswer),
  verdict: z.string(),
  basis: z.string(),
  drawn: z
    .object({ draws: z.int(), seed: z.int() })
    .nullable()
    .describe("guards drawn for the tolerance; null where it was left out"),
});

export type CompareRequest = Sent<typeof compareRequestSchema>;
export type CompareBody = z.output<typeof compareRequestSchema>;
export type CompareAnswer = Answered<typeof compareAnswerSchema>;
