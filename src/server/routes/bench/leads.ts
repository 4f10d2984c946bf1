import { leadsAnswerSchema, leadsRequestSchema } from "../../../contract/bench/leads.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { callerOf } from "../../care/caller.ts";
import { leadsJob } from "../../jobs/bench/leads.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function leadsRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/leads",
    {
      config: { gate: leadsJob.gate },
      schema: {
        summary:
          "Which lead of an unknown pickup is which, from a meter, taps and a compass, and how to wire it into a guard",
        tags: ["bench"],
        body: leadsRequestSchema,
        response: { 200: leadsAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("leads", leadsJob.read(request.body), callerOf(request, reply)),
  );
}
