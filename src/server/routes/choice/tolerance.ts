import { problemSchema } from "../../../contract/problem.ts";
import { toleranceAnswerSchema, toleranceRequestSchema } from "../../../contract/tolerance.ts";
import { callerOf } from "../../care/caller.ts";
import { toleranceJob } from "../../jobs/choice/tolerance.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function toleranceRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/tolerance",
    {
      config: { gate: toleranceJob.gate },
      schema: {
        summary: "What the parts' tolerances do to a curve: 5, 50 and 95 % of guards built from the list",
        tags: ["choice"],
        body: toleranceRequestSchema,
        response: { 200: toleranceAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("tolerance", toleranceJob.read(request.body), callerOf(request, reply)),
  );
}
