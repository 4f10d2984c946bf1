import { z } from "zod";
import { Controls, expandSweep } from "../../build/settings.ts";
import { strict } from "../../build/zod-tools.ts";
import { NO_CHECKPOINT } from "../../render/checkpoint.ts";
import { type CurvesRequest, curvesOf } from "../../render/curves.ts";
import { logSpaced } from "../../response/frequencies.ts";
import { curvesAnswerSchema } from "../answer-schemas.ts";
import { callerOf } from "../caller.ts";
import { curvesAnswer } from "../curve-answer.ts";
import { problemSchema } from "../problems.ts";
import { buildField, frequenciesField, settingsField, sweepField } from "../request-schemas.ts";
import type { App, RouteContext } from "../route-context.ts";
import { readBuildAt, refusal } from "../validation.ts";

const bodySchema = strict({
  build: buildField,
  sweep: sweepField.optional(),
  settings: settingsField.optional(),
  frequencies: frequenciesField.default({ from: 20, to: 20_000, count: 512 }),
  sources: z.boolean().default(false).describe("whether each coil's own transfer function is wanted too"),
  string: z.int().min(1).max(12).optional().describe("as this string is heard, 1 the highest; needs `fret`"),
  fret: z.number().min(0).max(36).optional().describe("0 is the open string; needs `string`"),
});

/** About 20 ms of work; anything longer goes to a worker. */
const MAX_POINTS_ON_EVENT_LOOP = 12 * 512;

function frequencyList(frequencies: z.output<typeof frequenciesField>): Float64Array {
  if (Array.isArray(frequencies)) return Float64Array.from(frequencies);
  return logSpaced(frequencies.from, frequencies.to, frequencies.count);
}

function readRequest(body: z.output<typeof bodySchema>): CurvesRequest {
  const build = readBuildAt("build", body.build);
  const settings = expandSweep(new Controls(build), body.sweep, body.settings);
  const { string, fret } = body;
  if ((string === undefined) !== (fret === undefined)) {
    const path = string === undefined ? "string" : "fret";
    throw refusal("REQUEST_INVALID", [{ path, message: "is missing; a heard curve needs both string and fret" }]);
  }
  const heard = string === undefined || fret === undefined ? undefined : { string, fret };
  return { build, settings, frequenciesHz: frequencyList(body.frequencies), withSources: body.sources, heard };
}

export async function responseRoutes(app: App, { runJob }: RouteContext): Promise<void> {
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
      const job = readRequest(request.body);
      const points = job.settings.length * job.frequenciesHz.length * (job.withSources ? 2 : 1);
      const curves =
        points <= MAX_POINTS_ON_EVENT_LOOP
          ? curvesOf(job, NO_CHECKPOINT)
          : await runJob("curves", job, callerOf(request, reply));
      return curvesAnswer(job.frequenciesHz, curves);
    },
  );
}
