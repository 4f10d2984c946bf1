import { NO_CHECKPOINT } from "../../../checkpoint.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { responseAnswerSchema, responseRequestSchema } from "../../../contract/response.ts";
import { curvesText } from "../../archive/curve-answer.ts";
import { callerOf } from "../../care/caller.ts";
import { asBuffer } from "../../http/answers/byte-ranges.ts";
import { pointsOf, responseJob } from "../../jobs/curves/response.ts";
import { BuildShelf, isCustomary } from "../../shelves/build-shelf.ts";
import { FrequencyLists } from "../../shelves/frequency-lists.ts";
import type { App, RouteContext } from "../route-context.ts";

/** A few milliseconds of work, as when one control is turned; anything longer goes to a worker. */
const MAX_POINTS_ON_EVENT_LOOP = 1024;

export async function responseRoutes(app: App, { runJob, whenShortOfMemory }: RouteContext): Promise<void> {
  const shelf = new BuildShelf();
  const lists = new FrequencyLists();
  whenShortOfMemory?.(() => shelf.clear());
  app.post(
    "/api/response",
    {
      config: { gate: responseJob.gate },
      schema: {
        summary: "Frequency response in every setting of a sweep",
        tags: ["curves"],
        body: responseRequestSchema,
        response: { 200: responseAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const { body } = request;
      const reader = shelf.readerOf(body.build);
      const list = lists.listOf(body.frequencies);
      const job = responseJob.read(reader, list.frequenciesHz, body);
      const isSoon = pointsOf(job.build, job) <= MAX_POINTS_ON_EVENT_LOOP && isCustomary(job.build);
      const text = isSoon
        ? curvesText(list.text(), reader.curvesOf(job, NO_CHECKPOINT), NO_CHECKPOINT)
        : await runJob("curvesJson", job, callerOf(request, reply));
      return reply.type("application/json; charset=utf-8").send(asBuffer(text) as never);
    },
  );
}
