import * as z from "zod";
import { strict } from "../build-file/zod-tools.ts";
import { MAX_FRET, MAX_STRINGS } from "../limits.ts";
import { peakAnswer, settingFields } from "./answer-fields.ts";
import { buildField, frequenciesField, settingsField, sweepField } from "./fields.ts";
import type { Answered, Sent } from "./wire.ts";

export const responseRequestSchema = strict({
  build: buildField,
  sweep: sweepField.optional(),
  settings: settingsField.optional(),
  frequencies: frequenciesField.default({ from: 20, to: 20_000, count: 512 }),
  sources: z.boolean().default(false).describe("whether each coil's own transfer function is wanted too"),
  string: z.int().min(1).max(MAX_STRINGS).optional().describe("as this string is heard, 1 the highest; needs `fret`"),
  fret: z.number().min(0).max(MAX_FRET).optional().describe("0 is the open string; needs `string`"),
});

const curveAnswerSchema = z.object({
  ...settingFields,
  label: z
    .string()
    .describe('what sounds, computed from the wiring: "bridge + middle, parallel, in phase, hum cancelling"'),
  setting: z.string().describe('the controls in words: "position 2, tone 7, volume 10"'),
  hum: z.number().describe("net hum at 50 Hz in dB re one reference single coil; −300 where it cancels out"),
  active: z.array(z.string()).describe("controls that have any effect in this setting"),
  magnitude: z.array(z.number()).describe("dB re the EMF of a coil with output 1"),
  phase: z.array(z.number()).describe("degrees, unwrapped"),
  peak: peakAnswer,
  cutoff: z.number().nullable().describe("Hz; above it the curve stays 3 dB under its level at 200 Hz"),
  sources: z
    .array(
      z.object({
        pickup: z.string(),
        coil: z.string(),
        magnitude: z.array(z.number()).describe("dB re this coil's unit EMF"),
        phase: z.array(z.number()),
      }),
    )
    .optional(),
});

export const responseAnswerSchema = z.object({
  frequencies: z.array(z.number()).describe("Hz"),
  curves: z.array(curveAnswerSchema),
});

export type ResponseRequest = Sent<typeof responseRequestSchema>;
export type ResponseBody = z.output<typeof responseRequestSchema>;
export type ResponseAnswer = Answered<typeof responseAnswerSchema>;
export type CurveAnswer = ResponseAnswer["curves"][number];
