import { type Encoding, encodeWav } from "../audio/wav-encode.ts";
import type { Settings } from "../build-file/settings.ts";
import type { Checkpoint } from "../checkpoint.ts";
import { amplitudeFromDecibels } from "../decibels.ts";
import { createLevelling, type Level, type Levelled, levelled, measure } from "./levels.ts";
import { createRenderer, type RenderRequest } from "./renderer.ts";
import type { UndoLimit } from "./undo.ts";

export interface PreviewRequest extends RenderRequest {
  readonly settings: Settings;
  readonly level: Level;
  readonly encoding: Encoding;
}

export interface Preview extends Levelled {
  readonly wav: Uint8Array;
  readonly sampleRateHz: number;
  readonly delaySamples: number;
  readonly limits: readonly UndoLimit[];
}

/**
 * One setting as a WAV file.
 * @throws PresolderError for a signal or `recordedWith` that cannot be used
 */
export function renderPreview(request: PreviewRequest, work: Checkpoint): Preview {
  const { settings, level, encoding } = request;
  const renderer = createRenderer(request, [settings], work);
  const sound = renderer.render(settings);
  work.checkpoint();
  const measured = measure(sound, level === "matched", renderer.wasSilent);
  const levelling = createLevelling(level, encoding);
  levelling.add(measured);
  const gainDb = levelling.gainOf(measured);
  const { sampleRateHz, delaySamples } = renderer;
  return {
    wav: encodeWav(sound, encoding, amplitudeFromDecibels(gainDb)),
    sampleRateHz,
    delaySamples,
    limits: renderer.limitsIn(settings),
    ...levelled(measured, gainDb),
  };
}
