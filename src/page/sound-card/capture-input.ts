import type { Sound } from "../../audio/sound.ts";
import { contextAt } from "./context-at.ts";
import { RATES_HZ } from "./measuring-signal.ts";
import { captureMissing, openInput } from "./open-input.ts";

/** Told as it goes. @param peaks of each channel, of full scale @param share of the whole that is recorded */
export type Progress = (peaks: readonly number[], share: number) => void;

const GONE = new Error("The input went away while it recorded. Plug the interface in again, and record again.");

const peakOf = (samples: Float32Array) => samples.reduce((most, each) => Math.max(most, Math.abs(each)), 0);

const STALLED = new Error("Nothing came in for 10 s. Choose the interface as the input, and record again.");
const STALLED_MS = 10_000;

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

interface Capture {
  readonly sampleRateHz: number;
  readonly seconds: number;
  readonly progress: Progress;
}

/** Blocks until there are enough. @throws the signal's reason where it is stopped, and where none comes any more */
function captured(
  node: AudioWorkletNode,
  { sampleRateHz, seconds, progress }: Capture,
  stop: AbortSignal,
): Promise<Sound> {
  const blocks: Float32Array[][] = [];
  let frames = 0;
  return new Promise((resolve, reject) => {
    let stall: ReturnType<typeof setTimeout>;
    const awaitBlock = () => {
      clearTimeout(stall);
      stall = setTimeout(() => reject(STALLED), STALLED_MS);
    };
    const fail = () => {
      clearTimeout(stall);
      reject(stop.reason);
    };
    awaitBlock();
    if (stop.aborted) fail();
    stop.addEventListener("abort", fail, { once: true });
    node.port.onmessage = ({ data }: MessageEvent<Float32Array[][]>) => {
      blocks.push(...data);
      frames += data.reduce((sum, [first]) => sum + first!.length, 0);
      const last = joined(data, sampleRateHz);
      progress(last.channels.map(peakOf), Math.min(1, frames / (seconds * sampleRateHz)));
      awaitBlock();
      if (frames < seconds * sampleRateHz) return;
      clearTimeout(stall);
      node.port.onmessage = null;
      resolve(joined(blocks, sampleRateHz));
    };
  });
}

export interface CaptureWanted {
  readonly deviceId: string;
  readonly seconds: number;
  /** Hz, 48 000 among them; absent: all that the service takes. */
  readonly rates?: readonly number[];
  /** What is to be ready before the input opens, and done as it does. */
  readonly prepare?: (context: AudioContext) => Promise<() => unknown>;
}

/**
 * What comes in for so many seconds.
 * @throws Error in words for a person; the reason of `stop` where it is stopped
 */
export async function captureInput(
  { deviceId, seconds, rates = RATES_HZ, prepare }: CaptureWanted,
  stop: AbortSignal,
  progress: Progress,
): Promise<Sound> {
  const missing = captureMissing();
  if (missing) throw new Error(missing);
  const context = await contextAt(rates);
  const gone = new AbortController();
  let stream: MediaStream | undefined;
  try {
    await context.audioWorklet.addModule(new URL("./capture-worklet.js", import.meta.url).href);
    const begin = await prepare?.(context);
    stream = await openInput(deviceId);
    for (const track of stream.getTracks()) track.addEventListener("ended", () => gone.abort(GONE));
    // A browser that holds it back settles this never; then no block comes.
    context.resume().catch((error) => gone.abort(error));
    const node = new AudioWorkletNode(context, "capture");
    // What nothing listens to is not run; what it plays is silence.
    new MediaStreamAudioSourceNode(context, { mediaStream: stream }).connect(node).connect(context.destination);
    begin?.();
    const capture = { sampleRateHz: context.sampleRate, seconds, progress };
    return await captured(node, capture, AbortSignal.any([stop, gone.signal]));
  } finally {
    for (const track of stream?.getTracks() ?? []) track.stop();
    await context.close();
  }
}
