import * as z from "zod";
import { quantity, strict } from "../../build-file/zod-tools.ts";
import { settingsAnswer } from "../answer-fields.ts";
import { meterAnswer } from "./meter-field.ts";
import { ohmsAnswer, readingAnswer } from "./meter-reading.ts";

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

export const readingsAnswer = {
  temperature: z.number().describe("°C of the coils, which all readings here are for"),
  readings: z.array(readingAnswer).describe("the standing readings, nothing plugged in"),
  probes: z.array(readingAnswer),
  defaultTolerances: z
    .array(z.object({ part: z.string(), coil: z.string().optional(), tolerance: z.number() }))
    .describe("parts that name no tolerance, and the fraction of common practice used instead"),
  meter: meterAnswer,
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
    coil: z
      .object({
        ohms: z.number(),
        low: z.number(),
        high: z.number(),
        at20: z.number().describe("of copper read at `temperature`, what it has at 20 °C"),
      })
      .optional(),
    sweep: z.object({ coil: z.number(), pot: z.number() }).optional(),
  })
  .optional()
  .describe("ohms; the range is the meter's 1 % and the pot's tolerance");
