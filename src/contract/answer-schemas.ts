import { z } from "zod";

const settingsAnswer = z
  .record(z.string(), z.union([z.number(), z.string()]))
  .describe("every control by its own name");

/** What names a curve or a preview in an answer. */
export const settingFields = {
  settings: settingsAnswer,
  label: z.string().describe('in words: "position 2, tone 7, volume 10"'),
  position: z.int().nullable().describe("of the main switch"),
  tone: z.number().nullable().describe("the dial all tone pots share, null where they differ or there is none"),
  volume: z.number().nullable(),
};

export const curveSchema = z.object({
  ...settingFields,
  label: z
    .string()
    .describe('what sounds, computed from the wiring: "bridge + middle, parallel, in phase, hum cancelling"'),
  setting: z.string().describe('the controls in words: "position 2, tone 7, volume 10"'),
  hum: z.number().describe("net hum at 50 Hz in dB re one reference single coil; −300 where it cancels out"),
  active: z.array(z.string()).describe("controls that have any effect in this setting"),
  magnitude: z.array(z.number()).describe("dB re the EMF of a coil with output 1"),
  phase: z.array(z.number()).describe("degrees, unwrapped"),
  peak: z
    .object({ frequency: z.number().describe("Hz"), level: z.number().describe("dB above the level at 200 Hz") })
    .nullable(),
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

export const curvesAnswerSchema = z.object({
  frequencies: z.array(z.number()).describe("Hz"),
  curves: z.array(curveSchema),
});
