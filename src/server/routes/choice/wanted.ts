import { problemSchema } from "../../../contract/problem.ts";
import { wantedAnswerSchema, wantedRequestSchema } from "../../../contract/wanted.ts";
import { wishesAnswerSchema, wishesRequestSchema } from "../../../contract/wishes.ts";
import { callerOf } from "../../care/caller.ts";
import { wantedJob } from "../../jobs/choice/wanted.ts";
import { wishesJob } from "../../jobs/choice/wishes.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function wantedRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/wishes",
    {
      config: { gate: wishesJob.gate },
      schema: {
        summary: "What is understood of wishes for a sound in words of the trade, and what every word is measured by",
        tags: ["choice"],
        body: wishesRequestSchema,
        response: { 200: wishesAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("wishes", wishesJob.read(request.body), callerOf(request, reply)),
  );
  app.post(
    "/api/wanted",
    {
      config: { gate: wantedJob.gate },
      schema: {
        summary: "Guards, from their layout to their values, that come nearest to wishes for a sound",
        tags: ["choice"],
        body: wantedRequestSchema,
        response: { 200: wantedAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("wanted", wantedJob.read(request.body), callerOf(request, reply)),
  );
}
