import { Readable } from "node:stream";
import { z } from "zod";
import { Controls } from "../../../build-file/settings.ts";
import { expandSweep } from "../../../build-file/sweep.ts";
import { strict } from "../../../build-file/zod-tools.ts";
import { settingsField, sweepField } from "../../../contract/fields.ts";
import type { SetBatch, SetRequest } from "../../../render/preview-set.ts";
import { assumedPlaces } from "../../../response/coil-places.ts";
import { logSpaced } from "../../../response/frequencies.ts";
import type { CurveTexts } from "../../archive/curve-texts.ts";
import { fileName, manifestOf } from "../../archive/preview-archive.ts";
import { type ZipEntry, zipStream } from "../../archive/zip-stream.ts";
import { type Caller, callerOf } from "../../care/caller.ts";
import { problemSchema } from "../../http/problems.ts";
import { readUpload } from "../../http/sound-upload.ts";
import { readRenderRequest, recordedWithField, renderFields } from "../../render-request.ts";
import type { RunJob } from "../../work/worker-pool.ts";
import type { App, RouteContext } from "../route-context.ts";
import { RENDERING } from "./preview.ts";

const bodySchema = strict({
  ...renderFields,
  sweep: sweepField.optional(),
  settings: settingsField.optional(),
  recordedWith: recordedWithField.optional(),
});

const zipAnswer = {
  description:
    "A ZIP: a WAV a setting, response.csv, response.json and manifest.json with gain, LUFS and true peak of each",
  content: { "application/zip": { schema: z.any().meta({ type: "string", format: "binary" }) } },
};

const FREQUENCIES = logSpaced(20, 20_000, 512);

interface Archive {
  readonly request: SetRequest;
  readonly first: SetBatch;
  readonly texts: CurveTexts;
  readonly manifest: object;
}

async function* entriesOf(archive: Archive, runJob: RunJob, caller: Caller): AsyncGenerator<ZipEntry> {
  const { request, first, texts, manifest } = archive;
  const { rows } = texts;
  yield { name: "manifest.json", bytes: Buffer.from(`${JSON.stringify(manifest, null, 2)}\n`), compress: true };
  yield { name: "response.csv", bytes: texts.csv, compress: true };
  yield { name: "response.json", bytes: texts.json, compress: true };
  let batch = first;
  for (let index = 0; ; ) {
    for (const wav of batch.wavs) {
      yield { name: fileName(index, rows[index]!.setting, rows.length), bytes: wav, compress: false };
      index++;
    }
    if (index >= rows.length) return;
    batch = await runJob("previewBatch", { ...request, from: index, levels: first.levels }, caller);
  }
}

export async function previewSetRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/previews",
    {
      preValidation: readUpload,
      schema: {
        summary: "Every setting of a sweep as WAV files in a ZIP, with the curves",
        description: RENDERING,
        tags: ["sound"],
        consumes: ["application/json", "multipart/form-data"],
        body: bodySchema,
        response: { 200: zipAnswer, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const { body, upload } = request;
      const render = readRenderRequest(body, upload);
      const settings = expandSweep(new Controls(render.build), body.sweep, body.settings);
      const { level, encoding } = body;
      const set: SetRequest = { ...render, settings, level, encoding, from: 0 };
      const caller = callerOf(request, reply);
      const curvesJob = { build: render.build, settings, frequenciesHz: FREQUENCIES, withSources: false };
      const [first, texts] = await Promise.all([
        runJob("previewBatch", set, caller),
        runJob("curveTexts", curvesJob, caller),
      ]);
      const manifest = manifestOf(set, first, texts.rows, assumedPlaces(render.build));
      const entries = entriesOf({ request: set, first, texts, manifest }, runJob, caller);
      reply.header("cache-control", "no-store").header("content-disposition", 'attachment; filename="previews.zip"');
      return reply.type("application/zip").send(Readable.from(zipStream(entries), { objectMode: false }));
    },
  );
}
