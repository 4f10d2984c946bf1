import { Controls, parseSettings } from "../../../build-file/settings.ts";
import type { PreviewBody, PreviewQuery } from "../../../contract/preview.ts";
import { type Preview, type PreviewRequest, renderPreview } from "../../../render/preview.ts";
import { readCoded, settingsInAddress } from "../../http/address-request.ts";
import type { Job } from "../../work/job.ts";
import { noiseWishOf } from "./noise-wish.ts";
import { playingOf } from "./phrase-only.ts";
import { readSoundRequest, type SoundFiles } from "./sound-request.ts";

function read(body: PreviewBody, files: SoundFiles | undefined): PreviewRequest {
  const { level, encoding } = body;
  const sound = readSoundRequest(body, files);
  return { ...sound, settings: parseSettings(new Controls(sound.build), body.settings), level, encoding };
}

const QUERY_KEYS = [
  "build",
  "signal",
  "hand",
  "strings",
  "rate",
  "level",
  "encoding",
  "hum",
  "noise",
  "hiss",
  "listening.chain",
  "listening.drive",
];

/** The same, from an address. */
export function readPreviewAddress(query: PreviewQuery): PreviewRequest {
  const { level, encoding, noise: hum = "none", hiss } = query;
  const coded = readCoded("build", query.build, settingsInAddress(query, QUERY_KEYS), "query");
  const noise = query.noise !== undefined || hiss !== undefined ? { hum, hiss: hiss === "on" } : undefined;
  return {
    ...coded,
    signal: { name: query.signal, sampleRateHz: query.rate, ...playingOf(query.signal, query) },
    listening: query["listening.chain"] === "none" ? undefined : { drive: query["listening.drive"] },
    noise: noiseWishOf(coded.build, noise, query.hum === undefined ? undefined : query.hum === "50" ? 50 : 60),
    level,
    encoding,
  };
}

/** A minute of mono at 44.1 kHz and 16 bits stays under it and renders in well under a second. */
const LONG_FILE_BYTES = 6_000_000;

export const previewJob = {
  read,
  run: renderPreview,
  size: ({ signal }) => ("file" in signal && signal.file.length > LONG_FILE_BYTES ? "large" : "small"),
  gate: "render",
} satisfies Job<PreviewRequest, Preview>;
