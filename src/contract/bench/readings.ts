import * as z from "zod";
import { quantity, strict } from "../../build-file/zod-tools.ts";
import { namedSettings, settingsAnswer } from "../answer-fields.ts";

const resistance = (meaning: string) => quantity("resistance", { above: 0, max: 1e9 }, meaning);

export const solveField = strict({
  coil: strict({
    reading: resistance("at the jack, volume at 10, one coil on"),
    pot: resistance("the volume pot's track"),
    tolerance: z.number().min(0).max(0.9).default(0).describe("fraction by which the track may be off"),
  })
    .optional()
    .describe("finds the coil: coil = reading · pot / (pot − reading)"),
  sweep: strict({
    atTen: resistance("at the jack with the volume at 10"),
    highest: resistance("the highest reading while the volume is swept, which is (pot + coil) / 4"),
  })
    .optional()
    .describe("finds the coil and the volume pot from two readings at the jack"),
}).describe("solves backwards from readings, whatever the build says");

export const ohmsAnswer = z.number().nullable();

const readingAnswer = z.object({
  label: z.string(),
  settings: namedSettings,
  between: z.tuple([z.string(), z.string()]),
  sweep: z.string().optional().describe("the pot swept through its whole travel for the highest reading"),
  ohms: ohmsAnswer.describe("nominal; null where open"),
  low: ohmsAnswer.describe("every part at the low end of its tolerance"),
  high: ohmsAnswer.describe("every part at the high end; up to 1 Ω of joint and test leads where the wiring has none"),
  potEndUnder: z
    .number()
    .optional()
    .describe(
      "where only the end of a pot's track is read: a good one stays under this; above `high`, 1 % of it, it leaks",
    ),
});

export const readingsAnswer = {
  temperature: z.number().describe("°C"),
  readings: z.array(readingAnswer).describe("the standing readings, nothing plugged in"),
  probes: z.array(readingAnswer),
  defaultTolerances: z
    .array(z.object({ part: z.string(), coil: z.string().optional(), tolerance: z.number() }))
    .describe("parts that name no tolerance, and the fraction of common practice used instead"),
};

export const impedancesAnswer = z
  .array(
    z.object({
      label: z.string(),
      settings: settingsAnswer,
      frequency: z.number().describe("Hz"),
      seriesOhms: ohmsAnswer.describe("null where no current flows"),
      reactanceOhms: ohmsAnswer,
      henries: z.number().nullable().describe("series inductance, where the reactance is inductive"),
      farads: z.number().nullable().describe("parallel capacitance, where the reactance is capacitive"),
    }),
  )
  .describe("what a meter for inductance and capacitance shows at the jack, nothing plugged in, dials at 10");

export const solvedAnswer = z
  .object({
    coil: z.object({ ohms: z.number(), low: z.number(), high: z.number() }).optional(),
    sweep: z.object({ coil: z.number(), pot: z.number() }).optional(),
  })
  .optional()
  .describe("ohms; the range is the meter's 1 % and the pot's tolerance");
