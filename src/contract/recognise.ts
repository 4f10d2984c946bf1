import * as z from "zod";
import { strict } from "../build-file/zod-tools.ts";
import { buildField, planJson } from "./fields.ts";
import type { Answered, Sent } from "./wire.ts";

export const recogniseRequestSchema = strict({ build: buildField });

const text = z.string().describe("the same as a plain sentence");
const part = z.string().describe("the guard's own name of the part");

const editAnswer = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("wire-laid"), between: z.tuple([z.string(), z.string()]), text }),
  z.object({ kind: z.literal("wire-left-out"), between: z.tuple([z.string(), z.string()]), text }),
  z.object({ kind: z.literal("part-added"), part, text }),
  z.object({ kind: z.literal("part-left-out"), part: z.string().describe("the plan's name of the part"), text }),
  z.object({ kind: z.literal("value"), part, field: z.string(), text }),
]);

const choice = z.object({
  value: z.string(),
  label: z.string(),
  reason: z.string().optional().describe("why it does not go together with the rest; absent where it does"),
});

const field = { id: z.string(), option: z.string().describe("of the catalogue's `planOptions`"), title: z.string() };

/** An option of a plan as a form shows it. */
export const planFieldSchema = z.discriminatedUnion("kind", [
  z.object({ ...field, kind: z.literal("choice"), value: z.string(), choices: z.array(choice).readonly() }),
  z.object({ ...field, kind: z.literal("ticks"), ticks: z.array(choice.extend({ on: z.boolean() })).readonly() }),
  z.object({
    ...field,
    kind: z.literal("quantity"),
    dimension: z.enum(["resistance", "capacitance"]),
    value: z.string(),
  }),
]);

export const recogniseAnswerSchema = z.union([
  z.object({
    plan: z.any().meta({
      ...planJson,
      description: "The plan that the guard is wired by, or of all plans the nearest; defaults left out",
    }),
    edits: z
      .array(editAnswer)
      .describe("what was done by hand on top of the plan; none where the guard is wired just so, by whatever route"),
    options: z
      .array(planFieldSchema)
      .readonly()
      .describe("every option of the plan: what it is set to, what else it may be, and why not where it may not"),
  }),
  z.object({ plan: z.null(), why: z.string().describe("why no plan comes near, in one sentence") }),
]);

export type PlanFieldAnswer = Answered<typeof planFieldSchema>;
export type RecogniseRequest = Sent<typeof recogniseRequestSchema>;
export type RecogniseBody = z.output<typeof recogniseRequestSchema>;
export type RecogniseAnswer = Answered<typeof recogniseAnswerSchema>;
