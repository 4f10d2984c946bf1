import { z } from "zod";
import { Controls, parseSettings } from "../../../build-file/settings.ts";
import { oneOf, strict } from "../../../build-file/zod-tools.ts";
import { settingsField } from "../../../contract/fields.ts";
import type { PreviewRequest } from "../../../render/preview.ts";
import { DEFAULT_SAMPLE_RATE_HZ, DEFAULT_SIGNAL, SIGNAL_NAMES } from "../../../render/signals.ts";
import { callerOf } from "../../care/caller.ts";
import { addressQuery, codeField, rateInAddress, readCoded, settingsInAddress } from "../../http/address-request.ts";
import { asBuffer, sendBytes } from "../../http/byte-ranges.ts";
import { isFresh, tagOfAddress } from "../../http/caching.ts";
import { previewHeaders } from "../../http/preview-headers.ts";
import { problemSchema } from "../../http/problems.ts";
import { readUpload } from "../../http/sound-upload.ts";
import { readRenderRequest, recordedWithField, renderFields } from "../../render-request.ts";
import type { App, RouteContext } from "../route-context.ts";

const bodySchema = strict({
  ...renderFields,
  settings: settingsField.default({}),
  recordedWith: recordedWithField.optional(),
});

const querySchema = addressQuery({
  build: codeField,
  signal: oneOf(SIGNAL_NAMES).default(DEFAULT_SIGNAL),
  rate: rateInAddress.default(DEFAULT_SAMPLE_RATE_HZ),
  level: renderFields.level,
  encoding: renderFields.encoding,
  hum: z.enum(["50", "60"], "expected 50 or 60").optional().describe("mains hum in every coil"),
});
const QUERY_KEYS = ["build", "signal", "rate", "level", "encoding", "hum"];

export const RENDERING =
  "A phrase is heard by every coil at its own place and goes through that coil's own transfer; a test signal or a file drives " +
  "every coil alike. A stereo file is rendered channel by channel and keeps its rate. At level `true` 1.0 is 1 V; integer " +
  "encodings are lowered by one gain for all only where a peak would pass -1 dBTP. At level `matched` every preview has one " +
  "loudness, -26 LUFS or as much lower as the highest peak of the set needs.";

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
        description: RENDERING,
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
      const preview = await runJob("preview", { ...render, settings, level, encoding }, callerOf(request, reply));
      reply.headers(previewHeaders(render, preview)).header("cache-control", "no-store");
      return reply.type("audio/wav").send(asBuffer(preview.wav));
    },
  );

  app.get(
    "/api/preview.wav",
    {
      schema: {
        summary: "One setting of a linked build as a WAV file; cacheable, with byte ranges",
        tags: ["sound"],
        querystring: querySchema,
        response: { 200: wavAnswer, 206: wavAnswer, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const { query } = request;
      const { level, encoding } = query;
      const coded = readCoded("build", query.build, settingsInAddress(query, QUERY_KEYS), "query");
      if (isFresh(request, reply, tagOfAddress(request.url))) return reply.code(304).send();
      const render: PreviewRequest = {
        ...coded,
        signal: { name: query.signal, sampleRateHz: query.rate },
        hum: query.hum === undefined ? undefined : query.hum === "50" ? 50 : 60,
        level,
        encoding,
      };
      const preview = await runJob("preview", render, callerOf(request, reply));
      return sendBytes(request, reply.headers(previewHeaders(render, preview)).type("audio/wav"), preview.wav);
    },
  );
}
