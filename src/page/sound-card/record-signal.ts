import type { Sound } from "../../audio/sound.ts";
import { amplitudeFromDecibels } from "../../decibels.ts";
import { fetchSignal, RATES_HZ, SIGNAL_SECONDS, type SignalKind } from "./measuring-signal.ts";
import { captureMissing, openInput } from "./open-input.ts";

export interface Wanted {
  readonly kind: SignalKind;
  readonly deviceId: string;
  /** Of the output, re full scale. */
  readonly decibels: number;
}

/** Told as it goes. @param peaks of each channel, of full scale @param share of the whole that is recorded */
export type Progress = (peaks: readonly number[], share: number) => void;

/** Recorded before the signal starts, and after its end, for what an interface is late by. */
const BEFORE_SECONDS = 1;
const AFTER_SECONDS = 1.5;
const WHOLE_SECONDS = BEFORE_SECONDS + SIGNAL_SECONDS + AFTER_SECONDS;

const GONE = new Error("The input went away while it recorded. Plug the interface in again, and record again.");

const peakOf = (samples: Float32Array) => samples.reduce((most, each) => Math.max(most, Math.abs(each)), 0);

/** A context at the interface's own rate, where the signal is there at it. */
async function contextAtInterfaceRate(): Promise<AudioContext> {
  const context = new AudioContext({ latencyHint: "playback" });
  if (RATES_HZ.includes(context.sampleRate)) return context;
  await context.close();
  return new AudioContext({ latencyHint: "playback", sampleRate: 48_000 });
}

/** Blocks end to end; a channel that some lack is silent there. */
function joined(blocks: readonly Float32Array[][], sampleRateHz: number): Sound {
  const frames = blocks.reduce((sum, [first]) => sum + first!.length, 0);
  const count = blocks.reduce((most, block) => Math.max(most, block.length), 1);
  const channels = Array.from({ length: count }, () => new Float32Array(frames));
  let at = 0;
  for (const block of blocks) {
    block.forEach((samples, channel) => {
      channels[channel]!.set(samples, at);
    });
    at += block[0]!.length;
  }
  return { sampleRateHz, channels };
}

/** Blocks until there are enough. @throws the signal's reason where it is stopped */
function captured(node: AudioWorkletNode, sampleRateHz: number, stop: AbortSignal, progress: Progress): Promise<Sound> {
  const blocks: Float32Array[][] = [];
  let frames = 0;
  return new Promise((resolve, reject) => {
    const fail = () => reject(stop.reason);
    if (stop.aborted) fail();
    stop.addEventListener("abort", fail, { once: true });
    node.port.onmessage = ({ data }: MessageEvent<Float32Array[][]>) => {
      blocks.push(...data);
      frames += data.reduce((sum, [first]) => sum + first!.length, 0);
      const last = joined(data, sampleRateHz);
      progress(last.channels.map(peakOf), Math.min(1, frames / (WHOLE_SECONDS * sampleRateHz)));
      if (frames >= WHOLE_SECONDS * sampleRateHz) resolve(joined(blocks, sampleRateHz));
    };
  });
}

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
export async function recordSignal(wanted: Wanted, stop: AbortSignal, progress: Progress): Promise<Sound> {
  const missing = captureMissing();
  if (missing) throw new Error(missing);
  const context = await contextAtInterfaceRate();
  const gone = new AbortController();
  let stream: MediaStream | undefined;
  try {
    await context.audioWorklet.addModule(new URL("./capture-worklet.js", import.meta.url).href);
    const signal = await fetchSignal(wanted.kind, context.sampleRate);
    const buffer = await context.decodeAudioData(signal);
    stream = await openInput(wanted.deviceId);
    for (const track of stream.getTracks()) track.addEventListener("ended", () => gone.abort(GONE));
    await context.resume();
    const node = new AudioWorkletNode(context, "capture");
    // What nothing listens to is not run; what it plays is silence.
    new MediaStreamAudioSourceNode(context, { mediaStream: stream }).connect(node).connect(context.destination);
    play(context, buffer, wanted.decibels);
    return await captured(node, context.sampleRate, AbortSignal.any([stop, gone.signal]), progress);
  } finally {
    for (const track of stream?.getTracks() ?? []) track.stop();
    await context.close();
  }
}
