import { z } from "zod";
import { partsOfKind } from "../../../build-file/build-file.ts";
import type { Build } from "../../../build-file/schema.ts";
import { expandSweep } from "../../../build-file/sweep.ts";
import { strict } from "../../../build-file/zod-tools.ts";
import { NO_CHECKPOINT } from "../../../checkpoint.ts";
import { curvesAnswerSchema } from "../../../contract/answer-schemas.ts";
import { buildField, frequenciesField, settingsField, sweepField } from "../../../contract/fields.ts";
import { MAX_POINTS } from "../../../limits.ts";
import type { CurveReader, CurvesQuestion, SettingCurve } from "../../../response/curve-reader.ts";
import { ANSWER_TEXT, curveText } from "../../archive/curve-answer.ts";
import { callerOf } from "../../care/caller.ts";
import { asBuffer } from "../../http/byte-ranges.ts";
import { problemSchema } from "../../http/problems.ts";
import { refusal } from "../../http/validation.ts";
import { BuildShelf, isCustomary } from "../../shelves/build-shelf.ts";
import { type FrequencyList, FrequencyLists } from "../../shelves/frequency-lists.ts";
import type { App, RouteContext } from "../route-context.ts";

const bodySchema = strict({
  build: buildField,
  sweep: sweepField.optional(),
  settings: settingsField.optional(),
  frequencies: frequenciesField.default({ from: 20, to: 20_000, count: 512 }),
  sources: z.boolean().default(false).describe("whether each coil's own transfer function is wanted too"),
  string: z.int().min(1).max(12).optional().describe("as this string is heard, 1 the highest; needs `fret`"),
  fret: z.number().min(0).max(36).optional().describe("0 is the open string; needs `string`"),
});

/** A few milliseconds of work, as when one control is turned; anything longer goes to a worker. */
const MAX_POINTS_ON_EVENT_LOOP = 1024;

function readQuestion(
  { controls }: CurveReader,
  { frequenciesHz }: FrequencyList,
  body: z.output<typeof bodySchema>,
): CurvesQuestion {
  const settings = expandSweep(controls, body.sweep, body.settings);
  const { string, fret } = body;
  if ((string === undefined) !== (fret === undefined)) {
    const path = string === undefined ? "string" : "fret";
    throw refusal("REQUEST_INVALID", [{ path, message: "is missing; a heard curve needs both string and fret" }]);
  }
  const heard = string === undefined || fret === undefined ? undefined : { string, fret };
  return { settings, frequenciesHz, withSources: body.sources, heard };
}

/** Points of every curve asked for, each coil's own included. */
function pointsOf(build: Build, { settings, frequenciesHz, withSources }: CurvesQuestion): number {
  const coils = partsOfKind(build, "pickup").reduce((count, [, { coils }]) => count + Object.keys(coils).length, 0);
  return settings.length * frequenciesHz.length * (withSources ? 1 + coils : 1);
}

function answerText(list: FrequencyList, curves: readonly SettingCurve[]): string {
  const { head, middle, end } = ANSWER_TEXT;
  return `${head}${list.text()}${middle}${curves.map(curveText).join()}${end}`;
}

function requireFewPoints(points: number): void {
  if (points <= MAX_POINTS) return;
  const message = `asks for ${points} points in all; expected at most ${MAX_POINTS}. Ask for fewer settings or frequencies`;
  throw refusal("LIMIT_EXCEEDED", [{ path: "frequencies", message }]);
}

export async function responseRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  const shelf = new BuildShelf();
  const lists = new FrequencyLists();
  app.post(
    "/api/response",
    {
      schema: {
        summary: "Frequency response in every setting of a sweep",
        tags: ["curves"],
        body: bodySchema,
        response: { 200: curvesAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const reader = shelf.readerOf(request.body.build);
      const list = lists.listOf(request.body.frequencies);
      const { build } = reader;
      const question = readQuestion(reader, list, request.body);
      const points = pointsOf(build, question);
      requireFewPoints(points);
      const text =
        points <= MAX_POINTS_ON_EVENT_LOOP && isCustomary(build)
          ? answerText(list, reader.curvesOf(question, NO_CHECKPOINT))
          : asBuffer(await runJob("curvesJson", { build, ...question }, callerOf(request, reply)));
      return reply.type("application/json; charset=utf-8").send(text as never);
    },
  );
}
