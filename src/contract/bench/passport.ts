import * as z from "zod";
import { oneOf, quantity, strict } from "../../build-file/zod-tools.ts";
import {
  MAX_DRAWING_SHAPES,
  MAX_LABEL_CHARS,
  MAX_NAME_CHARS,
  MAX_NOTES_CHARS,
  MAX_PATH_CHARS,
  MAX_PATH_NUMBER,
  MIN_DRAWING_SIDE,
} from "../../limits.ts";
import { buildField } from "../fields.ts";
import type { Answered, Sent } from "../wire.ts";
import { meterField } from "./meter-field.ts";
import { drawerField } from "./parts-list.ts";
import { temperatureField } from "./probe-fields.ts";

const colour = z.string().regex(/^#[0-9a-f]{6}$/i, 'expected a colour such as "#20242b"');
const finite = z.number().min(-1e6).max(1e6);
const at = z
  .tuple([finite, finite, finite, finite, finite, finite])
  .optional()
  .describe("the matrix a b c d e f of SVG 2, from the shape's own units to the drawing's");

const NUMBER = /(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/g;
const isDrawable = (d: string) => (d.match(NUMBER) ?? []).every((number) => Number(number) <= MAX_PATH_NUMBER);

const side = z.number().min(MIN_DRAWING_SIDE).max(1e6);

const lineShape = strict({
  kind: z.literal("line"),
  d: z
    .string()
    .max(MAX_PATH_CHARS)
    .regex(/^[MmLlHhVvCcSsQqTtAaZz\d\s.,+eE-]*$/, "expected path data of SVG 2")
    .refine(isDrawable, `expected no number beyond ${MAX_PATH_NUMBER}`)
    .describe("path data of SVG 2"),
  stroke: colour.optional(),
  fill: colour.optional(),
  width: z.number().min(0).max(1000).optional().describe("of the stroke, in the drawing's units"),
  dash: z.array(z.number().min(0).max(1000)).max(8).optional().describe("dash and space; of more the first two count"),
  round: z.boolean().optional().describe("round ends"),
  at,
});

const textShape = strict({
  kind: z.literal("text"),
  text: z.string().max(MAX_LABEL_CHARS),
  x: finite,
  y: finite.describe("of the base line"),
  size: z.number().gt(0).max(1000),
  fill: colour.optional(),
  bold: z.boolean().optional(),
  anchor: oneOf(["start", "middle", "end"]).default("start"),
  at,
});

const drawingField = strict({
  box: z.tuple([finite, finite, side, side]).describe("x, y, width, height"),
  shapes: z.array(z.discriminatedUnion("kind", [lineShape, textShape])).max(MAX_DRAWING_SHAPES),
}).describe("a picture for the page, as lines and texts: the page sends its own drawing of the guard");

const height = (end: string) => quantity("length", { min: 0, max: 0.05 }, `from string to pole at the ${end} string`);

export const passportRequestSchema = strict({
  build: buildField,
  format: oneOf(["json", "pdf", "label"])
    .default("json")
    .describe("pdf: one page of A4; label: 60 × 40 mm, for the cavity"),
  guitar: z.string().max(MAX_NAME_CHARS).optional().describe("as its owner calls it"),
  date: z.iso.date({ error: 'expected a day such as "2026-03-01"' }).optional(),
  temperature: temperatureField,
  meter: meterField,
  noted: z
    .record(z.string().max(MAX_LABEL_CHARS), z.string().max(MAX_NAME_CHARS))
    .default({})
    .describe('what a meter showed ("5k91", "OL"), by the label of an acceptance reading, as /api/bench has them'),
  heights: z
    .record(z.string().max(MAX_NAME_CHARS), strict({ bass: height("lowest"), treble: height("highest") }))
    .default({})
    .describe("by pickup, strings pressed at the last fret; metres, or text with a unit"),
  drawer: drawerField,
  notes: z.string().max(MAX_NOTES_CHARS).optional(),
  address: z
    .url({ protocol: /^https?$/, error: 'expected an address such as "https://example.org"' })
    .max(MAX_LABEL_CHARS)
    .optional()
    .describe("under which the service is reached by whoever reads the code on the paper; default: as it was asked"),
  drawing: drawingField.optional(),
});

const passportAnswer = z.object({
  title: z.string(),
  guitar: z.string().nullable(),
  date: z.string().nullable(),
  temperature: z.number().describe("°C"),
  notes: z.string().nullable(),
  link: z.string().describe("opens the page on this guard; what the code on the paper holds"),
  positions: z
    .array(z.object({ position: z.string(), sounds: z.string() }))
    .describe("of the main switch, and what a lesser switch makes of those that it changes"),
  parts: z.array(z.object({ part: z.string(), name: z.string(), what: z.string() })),
  readings: z
    .array(
      z.object({
        label: z.string().describe("as it is noted under"),
        where: z.string(),
        should: z.string(),
        shows: z.string().nullable().describe("on the `meter` told; null without one"),
        noted: z.string().nullable(),
        fits: z.boolean().nullable().describe("null where nothing was noted"),
      }),
    )
    .describe("the acceptance readings, tip to sleeve, every dial at 10"),
  heights: z
    .array(z.object({ pickup: z.string(), name: z.string(), bass: z.number(), treble: z.number() }))
    .describe("metres"),
  staysOver: z.array(z.object({ what: z.string(), quantity: z.int() })).describe("in the drawer, beyond the guard"),
});

export const passportAnswers = {
  description: "The passport as JSON, or as a page to print where `format` says so",
  content: {
    "application/json": { schema: passportAnswer },
    "application/pdf": { schema: z.any() },
  },
};

export type PassportRequest = Sent<typeof passportRequestSchema>;
export type PassportBody = z.output<typeof passportRequestSchema>;
export type PassportAnswer = Answered<typeof passportAnswer>;
export type PaperDrawing = NonNullable<PassportRequest["drawing"]>;
export type ReadDrawing = NonNullable<PassportBody["drawing"]>;
