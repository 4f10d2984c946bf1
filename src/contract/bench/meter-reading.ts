import * as z from "zod";
import { namedSettings } from "../answer-fields.ts";
import { onMeterAnswer } from "./meter-field.ts";

export const ohmsAnswer = z.number().nullable();

export const readingAnswer = z.object({
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
      "where only the end of a pot's track is read: a good one stays under this; above `high`, 1 % of it, something is wrong",
    ),
  meter: onMeterAnswer,
});
