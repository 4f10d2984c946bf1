import { TAPS_FILE, tapsAnswerSchema, tapsRequestSchema } from "../../../contract/measure/taps.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { MAX_TAP_SECONDS } from "../../../limits.ts";
import { callerOf } from "../../care/caller.ts";
import { readUploads } from "../../http/sound-upload.ts";
import { tapsJob } from "../../jobs/measure/taps.ts";
import type { App, RouteContext } from "../route-context.ts";

const TAPS = `A finished guard's pole rows, tapped with a steel tool in every position and recorded in one take: which coil sounds where, and which way it swings, against the drawing. A tap swings as a string does, by winding and magnet together. Asked with the build alone (JSON), it answers what to tap, in which order and at which second. With the take it is a multipart form: the field \`request\` is the JSON, the field \`taps\` the WAV file, of up to ${MAX_TAP_SECONDS} s in one channel at 44.1 or 48 kHz; a second channel or a higher rate leaves room for less, as no file has more samples than a minute of two channels at 192 kHz. Refused by name with the remedy: silence, and taps that cannot be given to the plan's steps, with the seconds at which groups of them were found.`;

export async function tapsRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/taps",
    {
      config: { gate: tapsJob.gate },
      preValidation: readUploads([TAPS_FILE]),
      schema: {
        summary: "What sounds in which position, and in phase with what, by tapping the poles",
        description: TAPS,
        tags: ["measure"],
        consumes: ["application/json", "multipart/form-data"],
        body: tapsRequestSchema,
        response: { 200: tapsAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("taps", tapsJob.read(request.body, request.uploads), callerOf(request, reply)),
  );
}
