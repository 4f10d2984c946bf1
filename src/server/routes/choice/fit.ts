import { rangeFromResistance } from "../../../choice/fit/resistance-range.ts";
import { type FitBody, fitAnswerSchema, fitRequestSchema, type RangeAnswer } from "../../../contract/fit.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { callerOf } from "../../care/caller.ts";
import { fitJob } from "../../jobs/choice/fit.ts";
import type { App, RouteContext } from "../route-context.ts";

/** What a resistance alone leaves open: a table's look-up, no work for a worker. */
function rangeAnswer({ type, resistance }: Extract<FitBody, { method: "resistance" }>): RangeAnswer {
  const { basis, ...ranges } = rangeFromResistance(type, resistance);
  return { method: "resistance", ranges, basis };
}

export async function fitRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/fit",
    {
      config: { gate: fitJob.gate },
      schema: {
        summary: "A coil's values from what was measured, with their uncertainty",
        description: "422 where the measurements cannot tell, with what to measure besides",
        tags: ["choice"],
        body: fitRequestSchema,
        response: { 200: fitAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const { body } = request;
      if (body.method === "resistance") return rangeAnswer(body);
      return runJob("fit", fitJob.read(body), callerOf(request, reply));
    },
  );
}
