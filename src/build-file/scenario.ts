import * as z from "zod";
import { parseOrThrow, strict } from "./zod-tools.ts";

/** A build file as it stands in the scenario, plan or long form; read it with `readBuild`. */
const buildFile = z.looseObject({ presolder: z.literal(1) });
const settingValue = z.union([z.number(), z.string()]);

/** An example build with the decision it is about. */
export const scenarioSchema = strict({
  id: z.string().regex(/^[a-z][a-z0-9-]{2,60}$/, "expected lower-case words joined by hyphens"),
  title: z.string().min(3).max(120),
  description: z.string().min(20).max(2000).describe("the invented setting: whose guard it is and what they have"),
  question: z.string().min(10).max(400).describe("what is to be decided or found"),
  build: buildFile,
  compareWith: buildFile.optional().describe("the other side of the decision"),
  settings: z.record(z.string(), settingValue).optional().describe("where to listen first"),
  sweep: z.record(z.string(), z.array(settingValue).min(1)).optional().describe("the settings worth comparing"),
  flaw: z.string().optional().describe("what is wrong, where the guard is wired wrongly on purpose"),
});

export type Scenario = z.infer<typeof scenarioSchema>;

/** Reads a scenario file. @throws PresolderError BUILD_INVALID with one fault for every field at fault. */
export function parseScenario(input: unknown): Scenario {
  return parseOrThrow(scenarioSchema, input, "BUILD_INVALID", ["scenario"]);
}
