import * as z from "zod";
import { strict } from "../build-file/zod-tools.ts";
import { AUDIBILITIES } from "../choice/compare/verdict.ts";
import { namedSettings } from "./answer-fields.ts";
import { largestAnswer } from "./compare.ts";
import { describedPart, drawerFields, sourceAnswer } from "./drawer-fields.ts";
import { buildField } from "./fields.ts";
import type { Answered, Sent } from "./wire.ts";

export const heardChangeRequestSchema = strict({ build: buildField, ...drawerFields });

export const heardChangeAnswerSchema = z.object({
  heard: z
    .array(
      z.object({
        name: z.string().describe("the part's name in the guard"),
        from: z.object(describedPart),
        to: z.object({
          ...describedPart,
          measured: z.number().optional().describe("ohms, of a pot that was measured"),
        }),
        source: sourceAnswer,
        cost: z.number().describe("0 for what lies there; else its price"),
        settings: namedSettings,
        label: z.string(),
        loudnessDifference: z.number().describe("LU"),
        largest: largestAnswer.describe("loudness matched, at the jack"),
        weighed: z.object({ largest: largestAnswer }).describe("as it is heard through the speaker, which decides"),
        audible: z.enum(AUDIBILITIES),
        verdict: z.string(),
        build: z.any().meta({ description: "the guard with it, in its long form" }),
      }),
    )
    .describe("exchanges of one part that are heard side by side, the cheapest first, of one cost the most different"),
  unheard: z.int().describe("exchanges tried that nobody hears for sure"),
  tried: z.int(),
  possible: z.int().describe("exchanges there are"),
  basis: z.string(),
});

export type HeardChangeRequest = Sent<typeof heardChangeRequestSchema>;
export type HeardChangeBody = z.output<typeof heardChangeRequestSchema>;
export type HeardChangeAnswer = Answered<typeof heardChangeAnswerSchema>;
