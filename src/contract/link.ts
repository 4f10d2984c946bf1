import * as z from "zod";
import { strict } from "../build-file/zod-tools.ts";
import { MAX_LINK_CODE_CHARS, MAX_VIEW_KEY_CHARS } from "../limits.ts";
import { buildField } from "./fields.ts";
import type { Answered, Sent } from "./wire.ts";

const viewField = z
  .record(z.string().max(MAX_VIEW_KEY_CHARS), z.unknown())
  .describe("how the page looks at the build: settings, signal, …");

export const linkRequestSchema = strict({ build: buildField, view: viewField.optional() });

export const linkAnswerSchema = z.object({
  code: z.string().max(MAX_LINK_CODE_CHARS).describe("for `build=` of the GET calls"),
  url: z.string().describe("opens the page on this build"),
});

export const linkParamsSchema = z.object({ code: z.string() });

export const linkContentSchema = z.object({
  build: z.any().describe("the build file as it was written"),
  view: viewField.optional(),
});

export type LinkRequest = Sent<typeof linkRequestSchema>;
export type LinkAnswer = Answered<typeof linkAnswerSchema>;
export type LinkContent = Answered<typeof linkContentSchema>;
