import { problemSchema } from "../../../contract/problem.ts";
import { recogniseAnswerSchema, recogniseRequestSchema } from "../../../contract/recognise.ts";
import { callerOf } from "../../care/caller.ts";
import { recogniseJob } from "../../jobs/bench/recognise.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function recogniseRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/recognise",
    {
      config: { gate: recogniseJob.gate },
      schema: {
        summary: "The plan that a guard is wired by, and what was done by hand on top of it",
        tags: ["bench"],
        body: recogniseRequestSchema,
        response: { 200: recogniseAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("recognise", recogniseJob.read(request.body), callerOf(request, reply)),
  );
}
