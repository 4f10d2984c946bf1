import { amplitudeFromDecibels } from "../../decibels.ts";
import { fetchSignal, type SignalKind } from "./measuring-signal.ts";

export interface Played {
  readonly kind: SignalKind;
  /** Of the output, re full scale. */
  readonly decibels: number;
}

/**
 * The measuring signal at a context's rate, ready to be played.
 * @returns what plays it, in so many seconds from then
 * @throws ServiceProblem where it cannot be had
 */
export async function signalFor(context: AudioContext, { kind, decibels }: Played) {
  const buffer = await context.decodeAudioData(await fetchSignal(kind, context.sampleRate));
  return (inSeconds: number): AudioBufferSourceNode => {
    const level = new GainNode(context, { gain: amplitudeFromDecibels(decibels) });
    const player = new AudioBufferSourceNode(context, { buffer });
    player.connect(level).connect(context.destination);
    player.start(context.currentTime + inSeconds);
    return player;
  };
}
