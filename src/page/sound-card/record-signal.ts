import type { Sound } from "../../audio/sound.ts";
import { captureInput, type Progress } from "./capture-input.ts";
import { SIGNAL_SECONDS } from "./measuring-signal.ts";
import { type Played, signalFor } from "./play-signal.ts";

export interface Wanted extends Played {
  readonly deviceId: string;
}

/** Recorded before the signal starts, and after its end, for what an interface is late by. */
const BEFORE_SECONDS = 1;
const AFTER_SECONDS = 1.5;

/**
 * Plays the measuring signal and records what comes in meanwhile, both by the interface's clock.
 * @throws Error in words for a person; the reason of `stop` where it is stopped
 */
export function recordSignal({ deviceId, ...played }: Wanted, stop: AbortSignal, progress: Progress): Promise<Sound> {
  const prepare = async (context: AudioContext) => {
    const play = await signalFor(context, played);
    return () => play(BEFORE_SECONDS);
  };
  const seconds = BEFORE_SECONDS + SIGNAL_SECONDS + AFTER_SECONDS;
  return captureInput({ deviceId, seconds, prepare }, stop, progress);
}
