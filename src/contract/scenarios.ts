import * as z from "zod";
import { scenarioSchema } from "../build-file/scenario.ts";
import { MAX_SCENARIO_ID_CHARS } from "../limits.ts";
import type { Answered } from "./wire.ts";

export const scenariosAnswerSchema = z.object({
  scenarios: z.array(scenarioSchema.pick({ id: true, title: true, description: true, question: true })),
});

export const scenarioParamsSchema = z.object({ id: z.string().max(MAX_SCENARIO_ID_CHARS) });

export const scenarioAnswerSchema = scenarioSchema;

export type ScenariosAnswer = Answered<typeof scenariosAnswerSchema>;
export type ScenarioEntry = ScenariosAnswer["scenarios"][number];
export type ScenarioAnswer = Answered<typeof scenarioAnswerSchema>;
