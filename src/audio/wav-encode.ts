import wavEncoder from "wav-encoder";
import { createDither } from "./dither.ts";
import { encodePcm16 } from "./pcm16.ts";
import type { Sound } from "./sound.ts";

export const ENCODINGS = ["pcm16", "pcm24", "float32"] as const;
export type Encoding = (typeof ENCODINGS)[number];

/**
 * The sound times `gain` as a WAV file. 16 bits are dithered (the same every time), 24 bits rounded; both hold samples beyond full
 * scale at its end. Floats are written as they are.
 *
 * @throws RangeError if there is no channel, or the channels differ in length, or a sample is not finite.
 */
export function encodeWav(sound: Sound, encoding: Encoding, gain = 1): Uint8Array {
  requireOneLength(sound);
  const file = encoding === "pcm16" ? encodePcm16(sound, gain) : null;
  if (file) return file;
  requireFinite(sound);
  return encodeByPackage(scaled(sound, gain), encoding);
}

/** The same by the encoder package for every encoding: the reference for the quicker 16-bit loop. */
export function encodeByPackage(sound: Sound, encoding: Encoding): Uint8Array {
  const channelData = encoding === "pcm16" ? dithered(sound.channels) : sound.channels;
  const options =
    encoding === "float32" ? { float: true } : ({ bitDepth: encoding === "pcm24" ? 24 : 16, symmetric: true } as const);
  return evenLength(new Uint8Array(wavEncoder.encode.sync({ sampleRate: sound.sampleRateHz, channelData }, options)));
}

function scaled(sound: Sound, gain: number): Sound {
  if (gain === 1) return sound;
  return { ...sound, channels: sound.channels.map((samples) => multiplied(samples, gain)) };
}

function multiplied(samples: Float32Array, gain: number): Float32Array {
  // A plain loop: `map` takes ten times as long.
  const results = new Float32Array(samples.length);
  for (let n = 0; n < results.length; n++) results[n] = samples[n]! * gain;
  return results;
}

function dithered(channels: readonly Float32Array[]): Float32Array[] {
  return channels.map((samples, channel) => {
    const dither = createDither(channel);
    return samples.map((sample) => sample + dither() / 32_768);
  });
}

/** The package leaves out the pad byte that a data chunk of odd length (24-bit mono) must have. */
function evenLength(file: Uint8Array): Uint8Array {
  if (file.length % 2 === 0) return file;
  const padded = new Uint8Array(file.length + 1);
  padded.set(file);
  new DataView(padded.buffer).setUint32(4, padded.length - 8, true);
  return padded;
}

function requireOneLength(sound: Sound): void {
  const frames = sound.channels[0]?.length;
  if (frames === undefined || sound.channels.some((samples) => samples.length !== frames)) {
    throw new RangeError("A sound needs at least one channel, and channels of one length");
  }
}

function requireFinite(sound: Sound): void {
  for (const samples of sound.channels) {
    const n = samples.findIndex((sample) => !Number.isFinite(sample));
    if (n >= 0) throw new RangeError(`Sample ${n} is ${samples[n]}, which no file may hold`);
  }
}
