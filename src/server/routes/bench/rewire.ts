import { problemSchema } from "../../../contract/problem.ts";
import { rewireAnswerSchema, rewireRequestSchema } from "../../../contract/rewire.ts";
import { callerOf } from "../../care/caller.ts";
import { rewireJob } from "../../jobs/bench/rewire.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function rewireRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/rewire",
    {
      config: { gate: rewireJob.gate },
      schema: {
        summary: "From a guard as found to a guard as wanted: the fewest joints to open and to make, and the way home",
        tags: ["bench"],
        body: rewireRequestSchema,
        response: { 200: rewireAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("rewire", rewireJob.read(request.body), callerOf(request, reply)),
  );
}
