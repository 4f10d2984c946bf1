import * as z from "zod";

/** The settings of an answer, without words. */
export const settingsAnswer = z.record(z.string(), z.union([z.number(), z.string()]));

export const namedSettings = settingsAnswer.describe("every control by its own name");

/** What names a curve or a preview in an answer. */
export const settingFields = {
  settings: namedSettings,
  label: z.string().describe('in words: "position 2, tone 7, volume 10"'),
  position: z.int().nullable().describe("of the main switch"),
  tone: z.number().nullable().describe("the dial all tone pots share, null where they differ or there is none"),
  volume: z.number().nullable(),
};

export const peakAnswer = z
  .object({ frequency: z.number().describe("Hz"), level: z.number().describe("dB above the level at 200 Hz") })
  .nullable();

export const featuresAnswer = z.object({ peak: peakAnswer, cutoff: z.number().nullable().describe("Hz") });
