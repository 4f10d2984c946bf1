import { problemSchema } from "../../../contract/problem.ts";
import { type TableRowAnswer, tableAnswers, tableRequestSchema } from "../../../contract/table.ts";
import { csvCell } from "../../archive/preview-archive.ts";
import { callerOf } from "../../care/caller.ts";
import { tableJob } from "../../jobs/table.ts";
import type { App, RouteContext } from "../route-context.ts";

const COLUMNS: readonly (readonly [heading: string, digits: number, of: (row: TableRowAnswer) => number | null])[] = [
  ["peak (Hz)", 1, ({ peak }) => peak?.frequency ?? null],
  ["peak (dB above 200 Hz)", 2, ({ peak }) => peak?.level ?? null],
  ["cutoff (Hz)", 1, ({ cutoff }) => cutoff],
  ["level at 200 Hz (dB)", 2, ({ level }) => level],
  ["loudness (LU)", 2, ({ loudness }) => loudness],
  ["hum (dB)", 2, ({ hum }) => hum],
];

/** One line a setting; what a setting does not have stays empty. */
export function tableCsv(rows: readonly TableRowAnswer[]): string {
  const controls = Object.keys(rows[0]?.settings ?? {});
  const head = ["setting", ...controls, ...COLUMNS.map(([heading]) => heading)].map(csvCell);
  const lines = rows.map((row) =>
    [
      csvCell(row.label),
      ...controls.map((name) => csvCell(String(row.settings[name] ?? ""))),
      ...COLUMNS.map(([, digits, of]) => of(row)?.toFixed(digits) ?? ""),
    ].join(","),
  );
  return `${[head.join(","), ...lines].join("\r\n")}\r\n`;
}

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
