import * as z from "zod";
import { namedSettings } from "../answer-fields.ts";

export const through = z.union([z.literal("jack"), z.object({ pickup: z.string(), coil: z.string() })]);

const columns = {
  frequencies: z.array(z.number()).describe("Hz"),
  magnitudes: z
    .array(z.number())
    .describe(
      "of a take at the jack: ohms, the interface's own input included; of an exciter's: fractions of full scale",
    ),
  degrees: z.array(z.number()),
  errors: z.array(z.number()).describe("standard error, a fraction"),
  expected: z
    .object({ magnitudes: z.array(z.number()), degrees: z.array(z.number()) })
    .describe("of the guard as drawn, its parts within tolerance where they fit these takes best"),
};

const curvesAnswer = z
  .object({
    unit: z.enum(["dB re 1 kΩ", "dB re full scale"]).describe("of a take at the jack, and of an exciter's"),
    measured: z.array(z.number()),
    drawn: z.array(z.number()).describe("of the guard as drawn, as `expected`"),
    best: z.array(z.number()).nullable().describe("of the likeliest departure; null where that is the drawing"),
  })
  .describe("sizes to lay over each other, one a frequency");

export const takeAnswer = z.object({
  file: z.string(),
  settings: namedSettings,
  through,
  title: z.string(),
  ...columns,
  curves: curvesAnswer,
  agrees: z.boolean().describe("whether the guard as drawn accounts for it"),
});
