import * as z from "zod";
import { LAYOUT_NAMES } from "../build-file/plans/layouts.ts";
import { oneOf, strict } from "../build-file/zod-tools.ts";
import { describedPart, drawerFields, sourceAnswer } from "./drawer-fields.ts";
import { planJson } from "./fields.ts";
import type { Answered, Sent } from "./wire.ts";

export const buildableRequestSchema = strict({
  ...drawerFields,
  layouts: z.array(oneOf(LAYOUT_NAMES)).min(1).max(LAYOUT_NAMES.length).optional().describe("left out: every layout"),
  hasJack: z.boolean().default(true).describe("the guitar has its jack, so that none has to lie in the drawer"),
});

const counted = z.object({
  count: z.int(),
  isAll: z.boolean().describe("false: there are more than that, and counting stopped"),
});

const score = z.object({
  sounds: z
    .int()
    .describe("that a usual listener tells apart side by side, tones at 10 and at 0, every switch both ways"),
  humFree: z.int().describe("how many of them can be had without hum"),
  unevenness: z.number().describe("LU between the loudest and the softest main position, everything at rest"),
  trebleLoss: z.number().describe("dB, largest difference heard in any band between volume at 5 and at 10"),
  cells: z.int().describe("settings heard"),
});

const foundAnswer = z.object({
  plan: z.any().meta({ ...planJson, description: "as a build file says it under `plan`" }),
  says: z.array(z.string()).describe("the guard in words: layout, pickups, pots and caps, what is switched"),
  score,
  parts: z.int(),
  guards: z.int().describe("of this wiring with other pots, caps and tones"),
  heard: z.int().describe("how many of those were heard; this is the best of them"),
  staysOver: z.array(
    z.object({ ...describedPart, count: z.int(), source: sourceAnswer, measured: z.number().optional() }),
  ),
});

export const buildableAnswerSchema = z.object({
  wirings: counted.describe("guards that differ in more than pots, caps and tones"),
  guards: counted,
  heard: z.int(),
  isExhaustive: z.boolean().describe("whether every guard was heard"),
  method: z.string(),
  best: z.array(foundAnswer).describe("the best of each wiring, best first, at most twelve"),
  purchases: z
    .array(
      z.object({
        ...describedPart,
        opens: z.int().describe("wirings that the drawer allows with it and does not without"),
        isCounted: z.boolean(),
        heard: z.int().describe("how many of those were heard, one guard each"),
        best: score.nullable(),
      }),
    )
    .describe(
      "single parts to buy that open most wirings, the most first, at most five; none where the drawer has more wirings than are counted",
    ),
  basis: z.string(),
});

export type BuildableRequest = Sent<typeof buildableRequestSchema>;
export type BuildableBody = z.output<typeof buildableRequestSchema>;
export type BuildableAnswer = Answered<typeof buildableAnswerSchema>;
export type BuildableFound = BuildableAnswer["best"][number];
