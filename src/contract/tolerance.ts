import * as z from "zod";
import { strict } from "../build-file/zod-tools.ts";
import { MAX_BAND_POINTS, MIN_BAND_POINTS } from "../limits.ts";
import { celsiusField } from "./bench/probe-fields.ts";
import { drawsFields } from "./draws.ts";
import { buildField, settingsField } from "./fields.ts";
import type { Answered, Sent } from "./wire.ts";

const USUAL_POINTS = 128;

export const toleranceRequestSchema = strict({
  build: buildField,
  settings: settingsField.default({}),
  points: z
    .int()
    .min(MIN_BAND_POINTS)
    .max(MAX_BAND_POINTS)
    .default(USUAL_POINTS)
    .describe("frequencies from 20 Hz to 20 kHz, log spaced"),
  temperature: z
    .tuple([celsiusField, celsiusField])
    .refine(([from, to]) => from <= to, "expected the lower temperature first")
    .optional()
    .describe("°C, from … to: caps of a known dielectric change by what it allows there; absent: 25 °C"),
  ...drawsFields,
});

const list = (meaning: string) => z.array(z.number()).describe(meaning);

const percentilesAnswer = z.object({
  low: z.number().describe("5 % of the guards lie under it"),
  middle: z.number(),
  high: z.number().describe("95 % of the guards lie under it"),
});

const spreadAnswer = z
  .array(
    z.object({
      part: z.string(),
      field: z.string(),
      nominal: z.number(),
      tolerance: z.number().describe("fraction; values are drawn evenly within it"),
      under: z.number().optional().describe("how far under, a fraction below 0, where that is another than over"),
      drift: z
        .tuple([z.number(), z.number()])
        .optional()
        .describe("least and most that the temperature adds, fractions"),
      isDefault: z.boolean().describe("the customary tolerance, since the build names none"),
    }),
  )
  .describe("what varies from guard to guard; tapers, magnets and the cable do not");

export const toleranceAnswerSchema = z.object({
  draws: z.int(),
  seed: z.int(),
  frequencies: list("Hz"),
  nominal: list("dB re the EMF of a coil with output 1, as the build says"),
  low: list("dB; 5 % of the guards lie under it"),
  middle: list("dB; half of the guards lie under it"),
  high: list("dB; 95 % of the guards lie under it"),
  peak: z.object({ frequency: percentilesAnswer, level: percentilesAnswer }).nullable(),
  peakShare: z.number().describe("the fraction of guards that have a peak"),
  cutoff: percentilesAnswer.nullable(),
  spread: spreadAnswer,
  ends: z
    .array(z.object({ part: z.string(), field: z.string(), low: z.number(), high: z.number() }))
    .describe(
      "what is left at the ends of tracks, ohms: drawn evenly on a log scale; none where the build says other than 1 Ω",
    ),
});

export type ToleranceRequest = Sent<typeof toleranceRequestSchema>;
export type ToleranceBody = z.output<typeof toleranceRequestSchema>;
export type ToleranceAnswer = Answered<typeof toleranceAnswerSchema>;
