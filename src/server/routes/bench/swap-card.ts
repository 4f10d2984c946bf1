import { swapCardAnswerSchema, swapCardRequestSchema } from "../../../contract/bench/swap-card.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { callerOf } from "../../care/caller.ts";
import { swapCardJob } from "../../jobs/bench/swap-card.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function swapCardRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/swap-card",
    {
      config: { gate: swapCardJob.gate },
      schema: {
        summary: "One loaded guard out and another in: what to do, to readjust, to measure, and to tell the player",
        tags: ["bench"],
        body: swapCardRequestSchema,
        response: { 200: swapCardAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("swapCard", swapCardJob.read(request.body), callerOf(request, reply)),
  );
}
