import { z } from "zod";
import { scenarioSchema } from "../../../build-file/scenario.ts";
import { faultAt } from "../../../errors.ts";
import { CACHED_FOR_A_WHILE } from "../../http/caching.ts";
import { problemSchema } from "../../http/problems.ts";
import { PATHS } from "../../paths.ts";
import { readScenarios } from "../../shelves/scenario-shelf.ts";
import type { App } from "../route-context.ts";

const entrySchema = scenarioSchema.pick({ id: true, title: true, description: true, question: true });
const paramsSchema = z.object({ id: z.string().max(100) });

export async function scenarioRoutes(app: App): Promise<void> {
  const scenarios = readScenarios(PATHS.scenarios);
  const entries = [...scenarios.values()].map(({ id, title, description, question }) => ({
    id,
    title,
    description,
    question,
  }));

  app.get(
    "/api/scenarios",
    {
      schema: {
        summary: "The example builds, each a decision",
        tags: ["builds"],
        response: { 200: z.object({ scenarios: z.array(entrySchema) }) },
      },
    },
    async (_request, reply) => {
      reply.header("cache-control", CACHED_FOR_A_WHILE);
      return { scenarios: entries };
    },
  );

  app.get(
    "/api/scenarios/:id",
    {
      schema: {
        summary: "One example build",
        tags: ["builds"],
        params: paramsSchema,
        response: { 200: scenarioSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const { id } = request.params;
      const scenario = scenarios.get(id);
      if (!scenario) {
        throw faultAt("NOT_FOUND", "id", `no scenario "${id}"; expected one of ${[...scenarios.keys()].join(", ")}`);
      }
      reply.header("cache-control", CACHED_FOR_A_WHILE);
      return scenario;
    },
  );
}
