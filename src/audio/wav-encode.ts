import wavEncoder from "wav-encoder";
import { encodePcm16 } from "./pcm16.ts";
import { requireFinite, type Sound } from "./sound.ts";

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
  if (encoding === "pcm16") return encodePcm16(sound, gain);
  requireFinite(sound);
  return encodeByPackage(scaled(sound, gain), encoding);
}

function encodeByPackage({ sampleRateHz, channels }: Sound, encoding: "pcm24" | "float32"): Uint8Array {
  const options = encoding === "float32" ? { float: true } : ({ bitDepth: 24, symmetric: true } as const);
  const file = wavEncoder.encode.sync({ sampleRate: sampleRateHz, channelData: channels }, options);
  return evenLength(new Uint8Array(file));
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
