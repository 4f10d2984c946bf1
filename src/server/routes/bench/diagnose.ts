import { diagnoseAnswerSchema, diagnoseRequestSchema } from "../../../contract/diagnose.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { callerOf } from "../../care/caller.ts";
import { diagnoseJob } from "../../jobs/bench/diagnose.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function diagnoseRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/diagnose",
    {
      config: { gate: diagnoseJob.gate },
      schema: {
        summary: "What may be wrong with a guard, ranked by how well it explains the readings",
        tags: ["bench"],
        body: diagnoseRequestSchema,
        response: { 200: diagnoseAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("diagnose", diagnoseJob.read(request.body), callerOf(request, reply)),
  );
}
