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

export const recogniseAnswerSchema = z.union([
  z.object({
    plan: z.any().meta({
      ...planJson,
      description: "The plan that the guard is wired by, or of all plans the nearest; defaults left out",
    }),
    edits: z
      .array(editAnswer)
      .describe("what was done by hand on top of the plan; none where the guard is wired just so, by whatever route"),
  }),
  z.object({ plan: z.null(), why: z.string().describe("why no plan comes near, in one sentence") }),
]);

export type RecogniseRequest = Sent<typeof recogniseRequestSchema>;
export type RecogniseBody = z.output<typeof recogniseRequestSchema>;
export type RecogniseAnswer = Answered<typeof recogniseAnswerSchema>;
