import type { Sound } from "../../audio/sound.ts";
import { amplitudeFromDecibels } from "../../decibels.ts";
import { captureInput, type Progress } from "./capture-input.ts";
import { fetchSignal, SIGNAL_SECONDS, type SignalKind } from "./measuring-signal.ts";

export interface Wanted {
  readonly kind: SignalKind;
  readonly deviceId: string;
  /** Of the output, re full scale. */
  readonly decibels: number;
}

/** Recorded before the signal starts, and after its end, for what an interface is late by. */
const BEFORE_SECONDS = 1;
const AFTER_SECONDS = 1.5;

function play(context: AudioContext, buffer: AudioBuffer, decibels: number): void {
  const level = new GainNode(context, { gain: amplitudeFromDecibels(decibels) });
  const player = new AudioBufferSourceNode(context, { buffer });
  player.connect(level).connect(context.destination);
  player.start(context.currentTime + BEFORE_SECONDS);
}

/**
 * Plays the measuring signal and records what comes in meanwhile, both by the interface's clock.
 * @throws Error in words for a person; the reason of `stop` where it is stopped
 */
export function recordSignal(
  { kind, deviceId, decibels }: Wanted,
  stop: AbortSignal,
  progress: Progress,
): Promise<Sound> {
  const prepare = async (context: AudioContext) => {
    const buffer = await context.decodeAudioData(await fetchSignal(kind, context.sampleRate));
    return () => play(context, buffer, decibels);
  };
  const seconds = BEFORE_SECONDS + SIGNAL_SECONDS + AFTER_SECONDS;
  return captureInput({ deviceId, seconds, prepare }, stop, progress);
}
