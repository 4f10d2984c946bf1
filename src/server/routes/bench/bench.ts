import { benchAnswerSchema, benchRequestSchema } from "../../../contract/bench/bench.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { callerOf } from "../../care/caller.ts";
import { benchJob } from "../../jobs/bench/bench.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function benchRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/bench",
    {
      config: { gate: benchJob.gate },
      schema: {
        summary:
          "What the bench needs: audit, meter readings, mounting and closing, build sheet, parts list, hardware, phase check",
        tags: ["bench"],
        body: benchRequestSchema,
        response: { 200: benchAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("bench", benchJob.read(request.body), callerOf(request, reply)),
  );
}
