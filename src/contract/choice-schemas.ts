import { z } from "zod";
import { oneOf, strict } from "../build-file/zod-tools.ts";
import { DEFAULT_DRAWS, DEFAULT_SEED } from "../choice/tolerance/tolerance.ts";
import { MAX_DRAWS, MIN_DRAWS } from "../limits.ts";
import { SIGNAL_NAMES } from "../render/signals.ts";
import { settingFields } from "./answer-schemas.ts";

export const weightingField = oneOf(SIGNAL_NAMES)
  .optional()
  .describe("a built-in signal whose spectrum weighs the bands; left out: every ERB band the same");

export const drawsFields = {
  draws: z.int().min(MIN_DRAWS).max(MAX_DRAWS).default(DEFAULT_DRAWS).describe("guards drawn from the parts list"),
  seed: z.int().min(0).max(0x7fffffff).default(DEFAULT_SEED).describe("the same seed draws the same guards"),
};

export const drawsField = strict(drawsFields);

export const percentilesAnswer = z.object({
  low: z.number().describe("5 % of the guards lie under it"),
  middle: z.number(),
  high: z.number().describe("95 % of the guards lie under it"),
});

export const spreadAnswer = z
  .array(
    z.object({
      part: z.string(),
      field: z.string(),
      nominal: z.number(),
      tolerance: z.number().describe("fraction; values are drawn evenly within it"),
      isDefault: z.boolean().describe("the customary tolerance, since the build names none"),
    }),
  )
  .readonly()
  .describe("what varies from guard to guard; tapers, magnets and the cable do not");

export const peakAnswer = z
  .object({ frequency: z.number().describe("Hz"), level: z.number().describe("dB above the level at 200 Hz") })
  .nullable();

export const featuresAnswer = z.object({ peak: peakAnswer, cutoff: z.number().nullable().describe("Hz") });

export const tableRowAnswer = z.object({
  ...settingFields,
  peak: peakAnswer,
  cutoff: z.number().nullable().describe("Hz"),
  level: z.number().describe("dB at 200 Hz re the EMF of a coil with output 1"),
  loudness: z.number().nullable().describe("LU below the loudest setting of the table; null where silent"),
  hum: z.number().nullable().describe("dB re the hum of one reference single coil; null where none is left"),
});
