import * as z from "zod";
import { strict } from "../build-file/zod-tools.ts";
import { buildField, longFormJson } from "./fields.ts";
import type { Answered, Sent } from "./wire.ts";

export const expandRequestSchema = strict({ build: buildField });

export const expandAnswerSchema = z.object({ build: z.any().meta({ ...longFormJson, description: "The long form" }) });

export type ExpandRequest = Sent<typeof expandRequestSchema>;
export type ExpandAnswer = Answered<typeof expandAnswerSchema>;
