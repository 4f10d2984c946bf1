import { previewQuerySchema, previewRequestSchema } from "../../../contract/preview.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { RENDERING, wavAnswer } from "../../../contract/sound-fields.ts";
import { callerOf } from "../../care/caller.ts";
import { asBuffer, sendBytes } from "../../http/answers/byte-ranges.ts";
import { isFresh, tagOfAddress } from "../../http/answers/caching.ts";
import { previewHeaders } from "../../http/preview-headers.ts";
import { readSoundUploads } from "../../http/sound-upload.ts";
import { previewJob, readPreviewAddress } from "../../jobs/sound/preview.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function previewRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/preview",
    {
      config: { gate: previewJob.gate },
      preValidation: readSoundUploads,
      schema: {
        summary: "One setting as a WAV file, of a built-in signal or (multipart) a file of one's own",
        description: RENDERING,
        tags: ["sound"],
        consumes: ["application/json", "multipart/form-data"],
        body: previewRequestSchema,
        response: { 200: wavAnswer, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const job = previewJob.read(request.body, request.uploads);
      const preview = await runJob("preview", job, callerOf(request, reply));
      reply.headers(previewHeaders(job, preview)).header("cache-control", "no-store");
      return reply.type("audio/wav").send(asBuffer(preview.wav));
    },
  );

  app.get(
    "/api/preview.wav",
    {
      config: { gate: previewJob.gate },
      schema: {
        summary: "One setting of a linked build as a WAV file; cacheable, with byte ranges",
        tags: ["sound"],
        querystring: previewQuerySchema,
        response: { 200: wavAnswer, 206: wavAnswer, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const job = readPreviewAddress(request.query);
      if (isFresh(request, reply, tagOfAddress(request.url))) return reply.code(304).send();
      const preview = await runJob("preview", job, callerOf(request, reply));
      return sendBytes(request, reply.headers(previewHeaders(job, preview)).type("audio/wav"), preview.wav);
    },
  );
}
