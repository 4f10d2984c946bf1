import * as z from "zod";
import { strict } from "../../build-file/zod-tools.ts";
import { MAX_TAP_SECONDS, MAX_TAP_STEPS } from "../../limits.ts";
import { namedSettings } from "../answer-fields.ts";
import { buildField } from "../fields.ts";
import { inputField } from "../fit.ts";
import type { Answered, Sent } from "../wire.ts";

/** The form's field that a take of taps comes in. */
export const TAPS_FILE = "taps";

const second = z.number().min(0).max(MAX_TAP_SECONDS);

const timingField = z
  .discriminatedUnion(
    "by",
    [
      strict({
        by: z.literal("plan"),
        start: second
          .optional()
          .describe("seconds of the take at which the first step began; absent: found by which rows sound"),
      }),
      strict({
        by: z.literal("hand"),
        times: z
          .array(second.nullable())
          .min(1)
          .max(MAX_TAP_STEPS)
          .describe("seconds of the take of each step's first tap, null where nothing is to be heard of it"),
      }),
      strict({ by: z.literal("pauses") }),
    ],
    { error: () => 'expected an object whose "by" is "plan", "hand" or "pauses"' },
  )
  .default({ by: "plan" })
  .describe("which taps belong to which step: by the plan's times, by times of one's own, or by pauses alone");

/** How a take of taps was made. */
export const tapFields = {
  timing: timingField,
  input: inputField
    .optional()
    .describe("what hangs across the jack: the interface's input and the lead; of what is left out: 1 MΩ and 400 pF"),
};

export const tapsRequestSchema = strict({
  build: buildField.describe("the guard as it was drawn"),
  ...tapFields,
});

const rowFields = {
  settings: namedSettings,
  position: z.string().describe('"position 2"'),
  pickup: z.string(),
  coil: z.string(),
  row: z.string().describe('"bridge, screw coil"'),
};

const planAnswer = z.object({
  kind: z.literal("plan"),
  how: z.array(z.string()),
  cautions: z.array(z.string()),
  steps: z
    .array(z.object({ ...rowFields, at: z.number().describe("seconds from the first step to when this one begins") }))
    .describe("in the order to tap them"),
  seconds: z.number().describe("from the first step to the end of the last"),
});

const cellAnswer = z.object({
  ...rowFields,
  between: z.tuple([z.number(), z.number()]).nullable().describe("seconds of the take; null where nothing was heard"),
  swings: z.int().describe("how many times the tool was heard to come or leave"),
  level: z.number().nullable().describe("dB re full scale, of the middle one of the taps"),
  floor: z.number().describe("dB re full scale under which nothing would have been heard"),
  clipped: z.boolean(),
  expected: z.boolean().describe("whether the row should sound, as drawn"),
  sounds: z.boolean().nullable().describe("whether it does; null where its level lies between"),
  chance: z.number().describe("0 to 1, that it sounds"),
  inPhase: z.boolean().nullable().describe("whether it swings as drawn; null where that says nothing"),
});

const departureAnswer = z.object({
  kind: z.enum(["nothing", "exchanged", "dead", "faint", "silent", "sounds", "reversed", "phase"]),
  message: z.string(),
  settings: namedSettings.nullable().describe("null where it is so throughout"),
  pickup: z.string().nullable(),
  coil: z.string().nullable(),
});

const tappedAnswer = z.object({
  kind: z.literal("tapped"),
  verdict: z.enum(["as-drawn", "departs", "unclear"]),
  title: z.string(),
  departures: z.array(departureAnswer).describe("what one cause explains most of first"),
  cells: z.array(cellAnswer).describe("a row in a position each, in the plan's order"),
  notes: z.array(z.string()).describe("what to bear in mind of this take"),
  cautions: z.array(z.string()),
});

export const tapsAnswerSchema = z.discriminatedUnion("kind", [planAnswer, tappedAnswer]);

export type TapsRequest = Sent<typeof tapsRequestSchema>;
export type TapsBody = z.output<typeof tapsRequestSchema>;
export type TapsAnswer = Answered<typeof tapsAnswerSchema>;
export type TapPlanAnswer = Extract<TapsAnswer, { kind: "plan" }>;
export type TappedAnswer = Extract<TapsAnswer, { kind: "tapped" }>;
