import { dielectricsAnswerSchema, dielectricsRequestSchema } from "../../../contract/dielectrics.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { callerOf } from "../../care/caller.ts";
import { dielectricsJob } from "../../jobs/choice/dielectrics.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function dielectricsRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/dielectrics",
    {
      config: { gate: dielectricsJob.gate },
      schema: {
        summary: "Whether it can be heard what caps are made of: by loss, by tolerance, by temperature and age",
        tags: ["choice"],
        body: dielectricsRequestSchema,
        response: { 200: dielectricsAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("dielectrics", dielectricsJob.read(request.body), callerOf(request, reply)),
  );
}
