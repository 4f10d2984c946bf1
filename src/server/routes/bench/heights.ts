import { heightsAnswerSchema, heightsRequestSchema } from "../../../contract/bench/heights.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { callerOf } from "../../care/caller.ts";
import { heightsJob } from "../../jobs/bench/heights.ts";
import type { App, RouteContext } from "../route-context.ts";

const HEIGHTS =
  "How a pickup's level falls with its gap is fitted to the levels sent, never assumed: record every position at two heights, better three. Without recordings the answer tells how far off the build file's own levels are. 422 where the recordings cannot tell a pickup's law, with how much farther to turn.";

export async function heightsRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/heights",
    {
      config: { gate: heightsJob.gate },
      schema: {
        summary: "How far to turn each pickup's height screws, and what a new guard changes for its player",
        description: HEIGHTS,
        tags: ["bench"],
        body: heightsRequestSchema,
        response: { 200: heightsAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("heights", heightsJob.read(request.body), callerOf(request, reply)),
  );
}
