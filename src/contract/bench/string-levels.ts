import * as z from "zod";
import { oneOf, strict } from "../../build-file/zod-tools.ts";
import { MAX_PLUCKS, MAX_STRINGS } from "../../limits.ts";
import type { Answered } from "../wire.ts";

export const stringLevelsRequestSchema = strict({
  strings: z.int().min(1).max(MAX_STRINGS).default(6).describe("how many are plucked"),
  plucks: z
    .int()
    .min(1)
    .max(MAX_PLUCKS)
    .optional()
    .describe("in a row on each string; left out: as many as are found, the same on every string"),
  order: oneOf(["low-to-high", "high-to-low"]).default("low-to-high").describe("in which the strings are plucked"),
});

const pluckAnswer = z.object({
  starts: z.number().describe("seconds: 50 ms after the pluck"),
  ends: z.number().describe("a second later"),
  level: z.number().describe("LUFS of that second: K-weighted (ITU-R BS.1770), ungated, the noise's power taken out"),
  rms: z.number().describe("dB re full scale, plain, nothing taken out, as an editor shows it"),
});

export const stringLevelsAnswerSchema = z.object({
  strings: z
    .array(
      z.object({
        string: z.int().describe("1 is the highest"),
        level: z.number().describe("LUFS, the median of its plucks; what `levels` of /api/heights wants"),
        rms: z.number().describe("dB re full scale, the median of its plucks"),
        plucks: z.array(pluckAnswer),
      }),
    )
    .describe("from string 1"),
  noise: z.number().describe("LUFS of the quietest fifth of a second"),
  seconds: z.number(),
});

export type StringLevelsBody = z.output<typeof stringLevelsRequestSchema>;
export type StringLevelsAnswer = Answered<typeof stringLevelsAnswerSchema>;
