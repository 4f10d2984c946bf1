import { Controls, parseSettings } from "../../../build-file/settings.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import type { SoundBody } from "../../../contract/sound-fields.ts";
import { faultAt } from "../../../errors.ts";
import type { SignalSource } from "../../../render/feed.ts";
import type { RenderRequest } from "../../../render/renderer.ts";
import { DEFAULT_SAMPLE_RATE_HZ, DEFAULT_SIGNAL } from "../../../render/signals.ts";
import { listeningOf } from "./listening-request.ts";
import { noiseWishOf } from "./noise-wish.ts";
import { playingOf } from "./phrase-only.ts";

function signalOf(body: SoundBody, upload: Uint8Array | undefined): SignalSource {
  const { signal, rate } = body;
  if (!upload) {
    const name = signal ?? DEFAULT_SIGNAL;
    return { name, sampleRateHz: rate ?? DEFAULT_SAMPLE_RATE_HZ, ...playingOf(name, body) };
  }
  playingOf(undefined, body);
  const given = signal !== undefined ? "signal" : rate !== undefined ? "rate" : undefined;
  if (given === undefined) return { file: upload };
  const message = given === "rate" ? "a file keeps its own rate" : "expected a name or a file, not both";
  throw faultAt("REQUEST_INVALID", given, message);
}

/** WAV files that came with a request: one to be played, one to be heard through. */
export interface SoundFiles {
  readonly signal?: Uint8Array | undefined;
  readonly cabinet?: Uint8Array | undefined;
}

/**
 * Everything of a request for sound but its settings.
 * @throws PresolderError naming the field at fault
 */
export function readSoundRequest(body: SoundBody, { signal: upload, cabinet }: SoundFiles = {}): RenderRequest {
  const build = readBuildAt("build", body.build);
  const signal = signalOf(body, upload);
  const noise = noiseWishOf(build, body.noise, body.hum);
  const base = { build, signal, noise, listening: listeningOf(body.listening, cabinet) };
  if (!body.recordedWith) return base;
  if (!upload) {
    const message = "only a recording of one's own, sent as a file, has been through a circuit";
    throw faultAt("REQUEST_INVALID", "recordedWith", message);
  }
  const old = readBuildAt("recordedWith.build", body.recordedWith.build);
  const settings = parseSettings(new Controls(old), body.recordedWith.settings, "recordedWith.settings");
  return { ...base, recordedWith: { build: old, settings } };
}
