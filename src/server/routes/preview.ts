import { z } from "zod";
import { Controls, parseSettings } from "../../build/settings.ts";
import { strict } from "../../build/zod-tools.ts";
import { whenClientLeaves } from "../client-gone.ts";
import { previewHeaders } from "../preview-headers.ts";
import { problemSchema } from "../problems.ts";
import { readRenderRequest, recordedWithField, renderFields } from "../render-request.ts";
import { settingsField } from "../request-schemas.ts";
import type { App, RouteContext } from "../route-context.ts";
import { readUpload } from "../sound-upload.ts";

const bodySchema = strict({
  ...renderFields,
  settings: settingsField.default({}),
  recordedWith: recordedWithField.optional(),
});

export const wavAnswer = {
  description: "A WAV file; gain, loudness, true peak and delay in `presolder-` headers",
  content: { "audio/wav": { schema: z.any().meta({ type: "string", format: "binary" }) } },
};

export async function previewRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/preview",
    {
      preValidation: readUpload,
      schema: {
        summary: "One setting as a WAV file, of a built-in signal or (multipart) a file of one's own",
        tags: ["sound"],
        consumes: ["application/json", "multipart/form-data"],
        body: bodySchema,
        response: { 200: wavAnswer, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const { body, upload } = request;
      const render = readRenderRequest(body, upload);
      const settings = parseSettings(new Controls(render.build), body.settings);
      const { level, encoding } = body;
      const signal = whenClientLeaves(request, reply);
      const preview = await runJob("preview", { ...render, settings, level, encoding }, { signal });
      reply.headers(previewHeaders(preview, render.recordedWith !== undefined)).header("cache-control", "no-store");
      return reply.type("audio/wav").send(Buffer.from(preview.wav.buffer, preview.wav.byteOffset, preview.wav.length));
    },
  );
}
