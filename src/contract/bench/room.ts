import * as z from "zod";
import { KINDS, VERDICTS } from "../../bench/room/clearances/clearance.ts";
import { ASPECTS } from "../../bench/room/placed-parts.ts";
import { oneOf, strict } from "../../build-file/zod-tools.ts";
import { buildField } from "../fields.ts";
import type { Answered, Sent } from "../wire.ts";
import { measuresShape } from "./room-fields.ts";

export const roomRequestSchema = strict({ build: buildField, ...measuresShape });

export const roomTemplateRequestSchema = strict({
  build: buildField,
  ...measuresShape,
  format: oneOf(["svg", "pdf"]).default("pdf"),
});

const pointAnswer = z.tuple([z.number(), z.number()]).describe("x, y in metres, in the frame of the parts' places");

const clearanceAnswer = z.object({
  part: z.string().describe('a part of the build, or "guard"'),
  against: z.string().describe("a cavity, another part, or what else it is held to"),
  kind: z.enum(KINDS),
  clearance: z.number().nullable().describe("metres; below 0 it does not go in, null where something is not said"),
  where: z.tuple([pointAnswer, pointAnswer]).nullable().describe("the tightest place, from the part to the other"),
  tolerance: z.number().describe("metres by which the clearance may be off, either way"),
  verdict: z.enum(VERDICTS).describe("tight: within the tolerance either way"),
  message: z.string(),
});

export const roomAnswerSchema = z.object({
  text: z.string().describe("the verdict, in its first sentence"),
  clearances: z.array(clearanceAnswer).describe("the least first; what is not said last"),
  asked: z
    .array(
      z.object({
        of: z.string().describe('a part, a cavity, "guard", "strings" or "body"'),
        what: z.string(),
        how: z.string().describe("how to measure it"),
      }),
    )
    .describe("what is still to be measured"),
  figures: z
    .array(z.object({ part: z.string(), what: z.string(), source: z.string() }))
    .describe("figures that were not measured, and where they were published"),
  shapes: z
    .array(z.object({ part: z.string(), what: z.enum(ASPECTS), outline: z.array(pointAnswer) }))
    .describe("what each part was taken to be, where it sits"),
});

export const roomTemplateAnswers = {
  description: "A drawing at 1:1 as PDF on A4, in tiles where it is larger, or as one SVG",
  content: {
    "application/pdf": { schema: z.any().meta({ type: "string", format: "binary" }) },
    "image/svg+xml": { schema: z.string() },
  },
};

export type RoomRequest = Sent<typeof roomRequestSchema>;
export type RoomBody = z.output<typeof roomRequestSchema>;
export type RoomAnswer = Answered<typeof roomAnswerSchema>;
export type RoomTemplateRequest = Sent<typeof roomTemplateRequestSchema>;
