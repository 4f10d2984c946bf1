import { type Encoding, encodeWav } from "../audio/wav-encode.ts";
import type { Settings } from "../build-file/settings.ts";
import type { Checkpoint } from "../checkpoint.ts";
import { amplitudeFromDecibels } from "../decibels.ts";
import { faultAt } from "../errors.ts";
import { MAX_DRIVEN_SET_SECONDS, MAX_SET_BYTES, MAX_SET_SECONDS } from "../limits.ts";
import { channelCountOf, type Feed, lengthOf } from "./feed.ts";
import { createLevelling, type Level, type Levelled, levelled, type Measured, measure } from "./levels.ts";
import { basisOf, type Renderer, type RenderRequest, rendererOf } from "./renderer.ts";
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
  /** One and the same for settings that sound the same. */
  readonly wavs: readonly Uint8Array[];
}

/** The default sweep of ten seconds in 16 bits goes out at once, and no caller holds more than this and a WAV in memory. */
const BATCH_BYTES = 56 * 2 ** 20;
const BYTES_PER_SAMPLE: Readonly<Record<Encoding, number>> = { pcm16: 2, pcm24: 3, float32: 4 };

function requireWithinBounds(feed: Feed, count: number, { encoding, listening }: SetRequest): void {
  const samples = count * lengthOf(feed);
  const seconds = samples / feed.sampleRateHz;
  const bytes = samples * channelCountOf(feed) * BYTES_PER_SAMPLE[encoding];
  const isDriven = listening !== undefined && listening.drive > 0;
  const most = isDriven ? MAX_DRIVEN_SET_SECONDS : MAX_SET_SECONDS;
  if (seconds <= most && bytes <= MAX_SET_BYTES) return;
  const found = `asks for ${count} WAVs, ${Math.round(seconds)} s and ${Math.round(bytes / 2 ** 20)} MiB in all`;
  const message = `${found}; expected at most ${most} s${isDriven ? " through a driven amplifier" : ""} and ${MAX_SET_BYTES / 2 ** 20} MiB`;
  throw faultAt("LIMIT_EXCEEDED", "sweep", message);
}

/** A WAV at the gain that held when it was rendered. */
interface EarlyWav {
  readonly wav: Uint8Array;
  readonly gainDb: number;
}

/** By what they sound like, so that settings which sound the same share one. */
type EarlyWavs = Map<object, EarlyWav>;

/**
 * Measures every setting, and encodes the first ones at the gain known by then. Mostly it stands to the end, and they need not be
 * rendered again.
 */
function measureSet(
  renderer: Renderer,
  { settings, level, encoding, from }: SetPlan,
  early: EarlyWavs,
  work: Checkpoint,
): Levelled[] {
  const levelling = createLevelling(level, encoding);
  const known = new Map<object, Measured>();
  let room = BATCH_BYTES;
  const measured = settings.map((each, index) => {
    work.checkpoint();
    const key = renderer.soundOf(each);
    const same = known.get(key);
    if (same) return same;
    const sound = renderer.renderPassing(each);
    const one = measure(sound, level === "matched", renderer.wasSilent);
    known.set(key, one);
    levelling.add(one);
    if (index >= from && room > 0) {
      const gainDb = levelling.gainOf(one);
      const wav = encodeWav(sound, encoding, amplitudeFromDecibels(gainDb));
      room -= wav.length;
      early.set(key, { wav, gainDb });
    }
    return one;
  });
  return measured.map((one) => levelled(one, levelling.gainOf(one)));
}

function encodeFrom(
  renderer: Renderer,
  { settings, encoding, from }: SetPlan,
  levels: readonly Levelled[],
  early: EarlyWavs,
  work: Checkpoint,
): Uint8Array[] {
  const wavs = new Set<Uint8Array>();
  const inOrder: Uint8Array[] = [];
  let bytes = 0;
  for (let index = from; index < settings.length && bytes < BATCH_BYTES; index++) {
    const { gainDb } = levels[index]!;
    const key = renderer.soundOf(settings[index]!);
    let found = early.get(key);
    if (found?.gainDb !== gainDb) {
      work.checkpoint();
      // The early one goes before its successor comes.
      early.delete(key);
      const sound = renderer.renderPassing(settings[index]!);
      found = { wav: encodeWav(sound, encoding, amplitudeFromDecibels(gainDb)), gainDb };
      early.set(key, found);
    }
    if (!wavs.has(found.wav)) bytes += found.wav.length;
    wavs.add(found.wav);
    inOrder.push(found.wav);
  }
  return inOrder;
}

/**
 * The next WAVs of a set, all levelled together.
 * @throws PresolderError LIMIT_EXCEEDED for more than MAX_SET_SECONDS or MAX_SET_BYTES, or as `createRenderer` does
 */
export function renderBatch(request: SetRequest, work: Checkpoint): SetBatch {
  const { settings, from, levels } = request;
  const basis = basisOf(request, work);
  requireWithinBounds(basis.feed, settings.length, request);
  return batchFrom(rendererOf(basis, levels ? settings.slice(from) : settings, work), request, work);
}

/** The same from a renderer that is ready for them. */
export function batchFrom(renderer: Renderer, request: SetPlan, work: Checkpoint): SetBatch {
  const { settings } = request;
  const early: EarlyWavs = new Map();
  const levels = request.levels ?? measureSet(renderer, request, early, work);
  return {
    sampleRateHz: renderer.sampleRateHz,
    delaySamples: renderer.delaySamples,
    levels,
    limits: request.levels ? [] : settings.map((each) => renderer.limitsIn(each)),
    wavs: encodeFrom(renderer, request, levels, early, work),
  };
}
