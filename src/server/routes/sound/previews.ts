import { Readable } from "node:stream";
import { previewsRequestSchema } from "../../../contract/previews.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { RENDERING, zipAnswer } from "../../../contract/sound-fields.ts";
import { chainSuffix } from "../../../listening/names.ts";
import type { SetBatch, SetRequest } from "../../../render/preview-set.ts";
import { assumedPlaces } from "../../../response/coil-places.ts";
import type { CurveTexts } from "../../archive/curve-texts.ts";
import { fileName, manifestOf } from "../../archive/preview-archive.ts";
import { type ZipEntry, zipStream } from "../../archive/zip-stream.ts";
import { type Caller, callerOf } from "../../care/caller.ts";
import { listeningHeader } from "../../http/preview-headers.ts";
import { readSoundUploads } from "../../http/sound-upload.ts";
import { curveTextsJob, previewBatchJob } from "../../jobs/sound/previews.ts";
import type { RunJob } from "../../work/worker-pool.ts";
import type { App, RouteContext } from "../route-context.ts";

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
      yield {
        name: fileName(index, rows[index]!.setting, rows.length, request.listening),
        bytes: wav,
        compress: false,
      };
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
      config: { gate: previewBatchJob.gate },
      preValidation: readSoundUploads,
      schema: {
        summary: "Every setting of a sweep as WAV files in a ZIP, with the curves",
        description: RENDERING,
        tags: ["sound"],
        consumes: ["application/json", "multipart/form-data"],
        body: previewsRequestSchema,
        response: { 200: zipAnswer, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const set = previewBatchJob.read(request.body, request.uploads);
      const caller = callerOf(request, reply);
      const [first, texts] = await Promise.all([
        runJob("previewBatch", set, caller),
        runJob("curveTexts", curveTextsJob.read(set), caller),
      ]);
      const manifest = manifestOf(set, first, texts.rows, assumedPlaces(set.build));
      const entries = entriesOf({ request: set, first, texts, manifest }, runJob, caller);
      reply
        .headers(listeningHeader(set))
        .header("cache-control", "no-store")
        .header("content-disposition", `attachment; filename="previews${chainSuffix(set.listening)}.zip"`);
      return reply.type("application/zip").send(Readable.from(zipStream(entries), { objectMode: false }));
    },
  );
}
