import { Controls } from "../../../build-file/settings.ts";
import { expandSweep } from "../../../build-file/sweep.ts";
import type { PreviewsBody } from "../../../contract/previews.ts";
import { renderBatch, type SetBatch, type SetRequest } from "../../../render/preview-set.ts";
import type { CurvesRequest } from "../../../response/curve-reader.ts";
import { logSpaced } from "../../../response/frequencies.ts";
import { type CurveTexts, curveTexts } from "../../archive/curve-texts.ts";
import type { Job } from "../../work/job.ts";
import { sizeOfCurves } from "../curves/response.ts";
import { expectFewSettings } from "./noise-wish.ts";
import { readSoundRequest, type SoundFiles } from "./sound-request.ts";

function readSet(body: PreviewsBody, files: SoundFiles | undefined): SetRequest {
  const { level, encoding } = body;
  const sound = readSoundRequest(body, files);
  const settings = expandSweep(new Controls(sound.build), body.sweep, body.settings);
  if (sound.noise) expectFewSettings(settings.length);
  return { ...sound, settings, level, encoding, from: 0 };
}

export const previewBatchJob = { read: readSet, run: renderBatch, size: () => "large", gate: "set" } satisfies Job<
  SetRequest,
  SetBatch
>;

const FREQUENCIES_HZ = logSpaced(20, 20_000, 512);

export const curveTextsJob = {
  read: ({ build, settings }: SetRequest) => ({ build, settings, frequenciesHz: FREQUENCIES_HZ, withSources: false }),
  run: curveTexts,
  size: sizeOfCurves,
  gate: "set",
} satisfies Job<CurvesRequest, CurveTexts>;
