import wavEncoder from "wav-encoder";
import { createDither } from "./dither.ts";
import { encodePcm16 } from "./pcm16.ts";
import type { Sound } from "./sound.ts";

export const ENCODINGS = ["pcm16", "pcm24", "float32"] as const;
export type Encoding = (typeof ENCODINGS)[number];

/**
 * The sound as a WAV file. 16 bits are dithered (the same every time), 24 bits rounded; both hold samples beyond full scale at
 * its end. Floats are written as they are.
 *
 * @throws RangeError if there is no channel, or the channels differ in length, or a sample is not finite.
 */
export function encodeWav(sound: Sound, encoding: Encoding): Uint8Array {
  requireWhole(sound);
  return encoding === "pcm16" ? encodePcm16(sound) : encodeByPackage(sound, encoding);
}

/** The same by the encoder package for every encoding: the reference for the quicker 16-bit loop. */
export function encodeByPackage(sound: Sound, encoding: Encoding): Uint8Array {
  const channelData = encoding === "pcm16" ? dithered(sound.channels) : sound.channels;
  const options =
    encoding === "float32" ? { float: true } : ({ bitDepth: encoding === "pcm24" ? 24 : 16, symmetric: true } as const);
  return evenLength(new Uint8Array(wavEncoder.encode.sync({ sampleRate: sound.sampleRateHz, channelData }, options)));
}

function dithered(channels: readonly Float32Array[]): Float32Array[] {
  const dither = createDither();
  const results = channels.map((samples) => new Float32Array(samples.length));
  for (let n = 0; n < results[0]!.length; n++) {
    results.forEach((result, channel) => {
      result[n] = channels[channel]![n]! + dither() / 32_768;
    });
  }
  return results;
}

/** The package leaves out the pad byte that a data chunk of odd length (24-bit mono) must have. */
function evenLength(file: Uint8Array): Uint8Array {
  if (file.length % 2 === 0) return file;
  const padded = new Uint8Array(file.length + 1);
  padded.set(file);
  new DataView(padded.buffer).setUint32(4, padded.length - 8, true);
  return padded;
}

function requireWhole(sound: Sound): void {
  const frames = sound.channels[0]?.length;
  if (frames === undefined || sound.channels.some((samples) => samples.length !== frames)) {
    throw new RangeError("A sound needs at least one channel, and channels of one length");
  }
  for (const samples of sound.channels) {
    for (let n = 0; n < frames; n++) {
      if (!Number.isFinite(samples[n])) throw new RangeError(`Sample ${n} is ${samples[n]}, which no file may hold`);
    }
  }
}
