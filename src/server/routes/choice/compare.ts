import { compareAnswerSchema, compareRequestSchema } from "../../../contract/compare.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { callerOf } from "../../care/caller.ts";
import { compareJob } from "../../jobs/choice/compare.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function compareRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/compare",
    {
      config: { gate: compareJob.gate },
      schema: {
        summary:
          "Whether two builds or settings can be told apart, and whether the difference beats the parts' tolerance",
        tags: ["choice"],
        body: compareRequestSchema,
        response: { 200: compareAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("compare", compareJob.read(request.body), callerOf(request, reply)),
  );
}
