import { problemSchema } from "../../../contract/problem.ts";
import { searchAnswerSchema, searchRequestSchema } from "../../../contract/search.ts";
import { callerOf } from "../../care/caller.ts";
import { searchJob } from "../../jobs/choice/search.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function searchRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/search",
    {
      config: { gate: searchJob.gate },
      schema: {
        summary: "The values of free parts that come nearest to a wish, and what they cost elsewhere",
        tags: ["choice"],
        body: searchRequestSchema,
        response: { 200: searchAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("search", searchJob.read(request.body), callerOf(request, reply)),
  );
}
