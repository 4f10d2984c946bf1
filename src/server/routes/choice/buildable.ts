import { buildableAnswerSchema, buildableRequestSchema } from "../../../contract/buildable.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { callerOf } from "../../care/caller.ts";
import { buildableJob } from "../../jobs/choice/buildable.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function buildableRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/buildable",
    {
      config: { gate: buildableJob.gate },
      schema: {
        summary: "What can be built from a drawer: guards ranked by their sounds, and the one purchase that opens most",
        tags: ["choice"],
        body: buildableRequestSchema,
        response: { 200: buildableAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("buildable", buildableJob.read(request.body), callerOf(request, reply)),
  );
}
