import { z } from "zod";
import { Controls, expandSweep } from "../../../build-file/settings.ts";
import { oneOf, strict } from "../../../build-file/zod-tools.ts";
import { tableRowAnswer, weightingField } from "../../../contract/choice-schemas.ts";
import { buildField, settingsField, sweepField } from "../../../contract/fields.ts";
import { tableCsv } from "../../archive/table-csv.ts";
import { callerOf } from "../../care/caller.ts";
import { problemSchema } from "../../http/problems.ts";
import { readBuildAt } from "../../http/validation.ts";
import type { App, RouteContext } from "../route-context.ts";

const bodySchema = strict({
  build: buildField,
  sweep: sweepField.optional(),
  settings: settingsField.optional(),
  signal: weightingField,
  format: oneOf(["json", "csv"]).default("json"),
});

const answerSchema = z.object({
  weighting: z.string().describe("the signal that loudness is of, or flat"),
  rows: z.array(tableRowAnswer),
});

const answers = {
  description: "The table as JSON, or as CSV where `format` says so",
  content: {
    "application/json": { schema: answerSchema },
    "text/csv": { schema: z.string() },
  },
};

export async function tableRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/table",
    {
      schema: {
        summary: "Peak, cutoff, level, loudness and hum of every setting of a sweep",
        tags: ["choice"],
        body: bodySchema,
        response: { 200: answers, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const { sweep, settings, signal, format } = request.body;
      const build = readBuildAt("build", request.body.build);
      const job = { build, settings: expandSweep(new Controls(build), sweep, settings), signal };
      const rows = await runJob("table", job, callerOf(request, reply));
      if (format === "json") return { weighting: signal ?? "flat", rows };
      reply.header("content-disposition", 'attachment; filename="settings.csv"');
      return reply.type("text/csv; charset=utf-8").serializer(String).send(tableCsv(rows));
    },
  );
}
