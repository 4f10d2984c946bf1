import type { Sound } from "../audio/sound.ts";
import { type Encoding, encodeWav } from "../audio/wav-encode.ts";
import type { Settings } from "../build/settings.ts";
import { PresolderError } from "../errors.ts";
import { MAX_SET_BYTES, MAX_SET_SECONDS } from "../limits.ts";
import type { Checkpoint } from "./checkpoint.ts";
import { decibelsToGain, gainsOf, type Level, type Levelled, levelled, type Measured, measure } from "./levels.ts";
import { createRenderer, type Renderer, type RenderRequest } from "./renderer.ts";
import type { UndoLimit } from "./undo.ts";

export interface SetPlan {
  readonly settings: readonly Settings[];
  readonly level: Level;
  readonly encoding: Encoding;
  /** Which of the settings to encode first in this batch. */
  readonly from: number;
  /** From the first batch's answer; without them the whole set is measured before anything is encoded. */
  readonly levels?: readonly Levelled[];
}

export interface SetRequest extends RenderRequest, SetPlan {}

/** As many WAVs as a batch holds, from `from` on. */
export interface SetBatch {
  readonly sampleRateHz: number;
  readonly delaySamples: number;
  readonly levels: readonly Levelled[];
  readonly limits: readonly (readonly UndoLimit[])[];
  readonly wavs: readonly Uint8Array[];
}

/** A set of a phrase in 16 bits goes out in two or three batches, and no caller holds more than this in memory. */
const BATCH_BYTES = 24 * 2 ** 20;
/** Renderings kept between measuring and encoding; what does not fit is rendered again. */
const KEPT_BYTES = 64 * 2 ** 20;
const BYTES_PER_SAMPLE: Readonly<Record<Encoding, number>> = { pcm16: 2, pcm24: 3, float32: 4 };

function requireWithinBounds(renderer: Renderer, count: number, encoding: Encoding): void {
  const seconds = (count * renderer.inputLength) / renderer.sampleRateHz;
  const bytes = count * renderer.inputLength * renderer.channelCount * BYTES_PER_SAMPLE[encoding];
  if (seconds <= MAX_SET_SECONDS && bytes <= MAX_SET_BYTES) return;
  const found = `asks for ${count} WAVs, ${Math.round(seconds)} s and ${Math.round(bytes / 2 ** 20)} MiB in all`;
  const message = `${found}; expected at most ${MAX_SET_SECONDS} s and ${MAX_SET_BYTES / 2 ** 20} MiB`;
  throw new PresolderError("LIMIT_EXCEEDED", `sweep: ${message}`, [{ path: "sweep", message }]);
}

function byteLength(sound: Sound): number {
  return sound.channels.reduce((sum, samples) => sum + samples.byteLength, 0);
}

/** Measures every setting. The renderings of the first ones stay, for they will be encoded next. */
function measureSet(renderer: Renderer, request: SetPlan, kept: Map<Settings, Sound>, work: Checkpoint): Levelled[] {
  const { settings, level, encoding } = request;
  let room = KEPT_BYTES;
  const measured = settings.map((each): Measured => {
    const sound = renderer.render(each);
    room -= byteLength(sound);
    if (room >= 0) kept.set(each, sound);
    work.checkpoint();
    return measure(sound, level === "matched");
  });
  const gains = gainsOf(measured, level, encoding);
  return measured.map((one, index) => levelled(one, gains[index]!));
}

function encodeFrom(
  renderer: Renderer,
  { settings, encoding, from }: SetPlan,
  levels: readonly Levelled[],
  kept: ReadonlyMap<Settings, Sound>,
  work: Checkpoint,
): Uint8Array[] {
  const wavs: Uint8Array[] = [];
  let bytes = 0;
  for (let index = from; index < settings.length && bytes < BATCH_BYTES; index++) {
    work.checkpoint();
    const sound = kept.get(settings[index]!) ?? renderer.render(settings[index]!);
    const wav = encodeWav(sound, encoding, decibelsToGain(levels[index]!.gainDb));
    bytes += wav.length;
    wavs.push(wav);
  }
  return wavs;
}

/**
 * The next WAVs of a set, all levelled together.
 * @throws PresolderError LIMIT_EXCEEDED for more than MAX_SET_SECONDS or MAX_SET_BYTES, or as `createRenderer` does
 */
export function renderBatch(request: SetRequest, work: Checkpoint): SetBatch {
  const { settings, from, levels } = request;
  return batchFrom(createRenderer(request, levels ? settings.slice(from) : settings, work), request, work);
}

/** The same from a renderer that is ready for them. */
export function batchFrom(renderer: Renderer, request: SetPlan, work: Checkpoint): SetBatch {
  const { settings, encoding } = request;
  requireWithinBounds(renderer, settings.length, encoding);
  const kept = new Map<Settings, Sound>();
  const levels = request.levels ?? measureSet(renderer, request, kept, work);
  return {
    sampleRateHz: renderer.sampleRateHz,
    delaySamples: renderer.delaySamples,
    levels,
    limits: request.levels ? [] : settings.map((each) => renderer.limitsIn(each)),
    wavs: encodeFrom(renderer, request, levels, kept, work),
  };
}
