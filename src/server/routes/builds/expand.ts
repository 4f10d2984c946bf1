import { expandBuild } from "../../../build-file/expand.ts";
import { expandAnswerSchema, expandRequestSchema } from "../../../contract/expand.ts";
import { problemSchema } from "../../../contract/problem.ts";
import type { App } from "../route-context.ts";

export async function expandRoutes(app: App): Promise<void> {
  app.post(
    "/api/expand",
    {
      config: { gate: "render" },
      schema: {
        summary: "A plan as the long form that is wired from it; a long form as it is",
        tags: ["builds"],
        body: expandRequestSchema,
        response: { 200: expandAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request) => ({ build: expandBuild(request.body.build) }),
  );
}
