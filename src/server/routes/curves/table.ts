import { problemSchema } from "../../../contract/problem.ts";
import { tableAnswers, tableRequestSchema } from "../../../contract/table.ts";
import { tableCsv } from "../../archive/table-csv.ts";
import { callerOf } from "../../care/caller.ts";
import { tableJob } from "../../jobs/curves/table.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function tableRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/table",
    {
      config: { gate: tableJob.gate },
      schema: {
        summary: "Peak, cutoff, level, loudness and hum of every setting of a sweep",
        tags: ["choice"],
        body: tableRequestSchema,
        response: { 200: tableAnswers, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const answer = await runJob("table", tableJob.read(request.body), callerOf(request, reply));
      if (request.body.format === "json") return answer;
      reply.header("content-disposition", 'attachment; filename="settings.csv"');
      return reply.type("text/csv; charset=utf-8").serializer(String).send(tableCsv(answer.rows));
    },
  );
}
