import { problemSchema } from "../../../contract/problem.ts";
import { scenarioAnswerSchema, scenarioParamsSchema, scenariosAnswerSchema } from "../../../contract/scenarios.ts";
import { faultAt } from "../../../errors.ts";
import { CACHED_FOR_A_WHILE } from "../../http/answers/caching.ts";
import { PATHS } from "../../paths.ts";
import { readScenarios } from "../../shelves/scenario-shelf.ts";
import type { App } from "../route-context.ts";

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
        response: { 200: scenariosAnswerSchema },
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
        params: scenarioParamsSchema,
        response: { 200: scenarioAnswerSchema, "4xx": problemSchema },
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
