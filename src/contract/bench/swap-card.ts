import * as z from "zod";
import { LETTING_GO } from "../../bench/swap-card/connections.ts";
import { oneOf, quantity, strict } from "../../build-file/zod-tools.ts";
import { AUDIBILITIES } from "../../choice/compare/verdict.ts";
import { MAX_LABEL_CHARS, MAX_NAME_CHARS } from "../../limits.ts";
import { buildField } from "../fields.ts";
import type { Answered, Sent } from "../wire.ts";
import { meterField } from "./meter-field.ts";
import { temperatureField } from "./probe-fields.ts";

const gap = (which: string) => quantity("length", { min: 0, max: 0.05 }, `from string to pole at the ${which} string`);
const heights = z
  .record(z.string().max(MAX_NAME_CHARS), strict({ bass: gap("lowest"), treble: gap("highest") }))
  .default({});
const letGo = (what: string) =>
  oneOf(LETTING_GO)
    .default("solder")
    .describe(`how ${what} come off: unsoldered, unplugged, or unscrewed and taken along`);

export const swapCardRequestSchema = strict({
  out: buildField.describe("the guard that comes out"),
  in: buildField.describe("the guard that goes in"),
  guitar: z.string().max(MAX_NAME_CHARS).optional().describe("as its owner calls it"),
  date: z.iso.date({ error: 'expected a day such as "2026-03-01"' }).optional(),
  how: strict({
    jack: letGo("the jack's wires"),
    claw: letGo("the spring claw's wires"),
    shield: letGo("the foil's wires"),
    other: letGo("other wires"),
  }).prefault({}),
  temperature: temperatureField,
  meter: meterField,
  noted: z
    .record(z.string().max(MAX_LABEL_CHARS), z.string().max(MAX_NAME_CHARS))
    .default({})
    .describe("what a meter showed of the guard that goes in, by the label of an acceptance reading"),
  heights: heights.describe("kept of the guard that goes in, by pickup; strings pressed at the last fret"),
  heightsOut: heights.describe("of the guard that comes out"),
});

const step = z.object({ title: z.string(), text: z.string() });

export const swapCardAnswerSchema = z.object({
  out: z.string(),
  in: z.string(),
  guitar: z.string().nullable(),
  date: z.string().nullable(),
  cautions: z.array(z.string()),
  stepsOut: z.array(step),
  stepsIn: z.array(step),
  stays: z.array(z.string()).describe("what is not touched"),
  heights: z.array(z.string()),
  readings: z
    .array(
      z.object({
        label: z.string(),
        where: z.string(),
        should: z.string(),
        shows: z.string().nullable(),
        noted: z.string().nullable(),
        fits: z.boolean().nullable(),
      }),
    )
    .describe("of the guard that goes in, tip to sleeve, every dial at 10"),
  player: z
    .array(
      z.object({
        position: z.string(),
        label: z.string(),
        nearest: z.string().nullable().describe("the position that comes nearest; null where nothing sounds"),
        nearestLabel: z.string().nullable(),
        distanceDb: z.number().nullable().describe("RMS over the ear's bands, equally loud through a guitar speaker"),
        audible: z.enum(AUDIBILITIES).nullable().describe("the largest difference in any band that is heard"),
        loudnessLu: z.number().nullable().describe("the nearest minus this one"),
        text: z.string(),
      }),
    )
    .describe("every sound of the guard that comes out, and where it is now"),
  fresh: z.array(z.object({ position: z.string(), label: z.string() })).describe("sounds that it had nothing like"),
  humFree: z.object({ before: z.array(z.string()), after: z.array(z.string()) }),
  volume: z.array(
    z.object({
      positions: z.array(z.int()).describe("of the main switch, for which the volume goes so"),
      dials: z.array(z.object({ from: z.number(), fallDb: z.number(), to: z.number().nullable() })),
      treble: z.tuple([z.number(), z.number()]).nullable().describe("dB of treble from 10 to 6, before and now"),
      text: z.string(),
    }),
  ),
  tone: z.array(z.string()).describe("by position"),
  switches: z.array(z.string()),
  notes: z.array(z.string()),
});

export type SwapCardRequest = Sent<typeof swapCardRequestSchema>;
export type SwapCardBody = z.output<typeof swapCardRequestSchema>;
export type SwapCardAnswer = Answered<typeof swapCardAnswerSchema>;
