import { heardChangeAnswerSchema, heardChangeRequestSchema } from "../../../contract/heard-change.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { callerOf } from "../../care/caller.ts";
import { heardChangeJob } from "../../jobs/choice/heard-change.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function heardChangeRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/heard-change",
    {
      config: { gate: heardChangeJob.gate },
      schema: {
        summary: "Exchanges of one part, from a drawer or its prices, that are heard, the cheapest first",
        tags: ["choice"],
        body: heardChangeRequestSchema,
        response: { 200: heardChangeAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("heardChange", heardChangeJob.read(request.body), callerOf(request, reply)),
  );
}
