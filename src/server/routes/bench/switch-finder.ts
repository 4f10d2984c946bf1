import { switchAnswerSchema, switchRequestSchema } from "../../../contract/bench/switch-finder.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { callerOf } from "../../care/caller.ts";
import { switchJob } from "../../jobs/bench/switch-finder.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function switchRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/switch",
    {
      config: { gate: switchJob.gate },
      schema: {
        summary: "What an unknown switch is, from where a continuity beeper beeps, and the two lugs to touch next",
        tags: ["bench"],
        body: switchRequestSchema,
        response: { 200: switchAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("switchFinder", switchJob.read(request.body), callerOf(request, reply)),
  );
}
