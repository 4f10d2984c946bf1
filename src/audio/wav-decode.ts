import { PresolderError } from "../errors.ts";
import { MAX_AUDIO_CHANNELS, MAX_AUDIO_SECONDS, MAX_SAMPLE_AMPLITUDE, MAX_SAMPLE_RATE_HZ } from "../limits.ts";
import { type WavChunks, wavChunks } from "./riff.ts";
import type { Sound } from "./sound.ts";
import { signalFault, wavFault } from "./wav-fault.ts";
import { type SampleKind, type WavFormat, wavFormat } from "./wav-format.ts";

type Reader = (view: DataView, at: number) => number;

/** 8-bit samples are unsigned around 128; narrower valid bits of an extensible file stand at the top of their container. */
const READERS: Readonly<Record<SampleKind, Reader>> = {
  int8: (view, at) => (view.getUint8(at) - 128) / 128,
  int16: (view, at) => view.getInt16(at, true) / 32_768,
  int24: (view, at) => ((view.getInt8(at + 2) << 16) | view.getUint16(at, true)) / 8_388_608,
  int32: (view, at) => view.getInt32(at, true) / 2_147_483_648,
  float32: (view, at) => view.getFloat32(at, true),
  float64: (view, at) => view.getFloat64(at, true),
};

/**
 * A WAV file as sound: 8, 16, 24 and 32-bit integers, 32 and 64-bit floats, plain or extensible, 1 or 2 channels, 8 to 192 kHz.
 * Up to `maxSeconds`, and no more samples than a minute of stereo at 192 kHz has. A length that a tool left open when
 * it wrote to a pipe is taken to reach to the end of the file.
 *
 * @throws PresolderError WAV_INVALID (not such a file, cut short, contradictory), LIMIT_EXCEEDED (too long, too many channels,
 * rate out of range) or SOUND_UNUSABLE (no samples; a sample that is not finite or absurdly large), all under the path `signal`.
 */
export function decodeWav(bytes: Uint8Array, maxSeconds = MAX_AUDIO_SECONDS): Sound {
  const chunks = wavChunks(bytes);
  const format = wavFormat(bytes, chunks.format);
  const frames = frameCount(format, chunks, maxSeconds);
  const view = new DataView(bytes.buffer, bytes.byteOffset + chunks.data.start, chunks.data.size);
  const channels = Array.from({ length: format.channels }, (_, channel) => readChannel(view, format, channel, frames));
  channels.forEach((samples, channel) => void requireUsable(samples, channel));
  return { sampleRateHz: format.sampleRateHz, channels };
}

/** Samples of all channels that a file says it has, none of them read; 0 of a file that cannot be read. */
export function samplesIn(bytes: Uint8Array): number {
  try {
    const { format, data } = wavChunks(bytes);
    return Math.floor(data.size / wavFormat(bytes, format).bytesPerSample);
  } catch (error) {
    if (error instanceof PresolderError) return 0;
    throw error;
  }
}

/** Samples of all channels: those of the longest sound at the highest rate; a longer one has a lower rate. */
const MAX_SAMPLES = MAX_AUDIO_SECONDS * MAX_SAMPLE_RATE_HZ * MAX_AUDIO_CHANNELS;

function frameCount(format: WavFormat, { data, streamed }: WavChunks, maxSeconds: number): number {
  const bytesPerFrame = format.channels * format.bytesPerSample;
  if (data.size % bytesPerFrame !== 0 && !streamed) {
    throw wavFault(`${data.size} bytes of samples are not a whole number of frames of ${bytesPerFrame} bytes`);
  }
  const frames = Math.floor(data.size / bytesPerFrame);
  if (frames === 0) throw signalFault("SOUND_UNUSABLE", "the file has no samples, expected at least one");
  const seconds = frames / format.sampleRateHz;
  const most = Math.min(maxSeconds, MAX_SAMPLES / (format.sampleRateHz * format.channels));
  if (seconds > most) {
    throw signalFault(
      "LIMIT_EXCEEDED",
      `the sound lasts ${seconds.toFixed(2)} s, expected at most ${Math.floor(most)} s`,
    );
  }
  return frames;
}

function readChannel(view: DataView, format: WavFormat, channel: number, frames: number): Float32Array {
  const read = READERS[format.kind];
  const step = format.channels * format.bytesPerSample;
  const samples = new Float32Array(frames);
  for (let n = 0, at = channel * format.bytesPerSample; n < frames; n++, at += step) samples[n] = read(view, at);
  return samples;
}

function requireUsable(samples: Float32Array, channel: number): void {
  const at = samples.findIndex((sample) => !(Math.abs(sample) <= MAX_SAMPLE_AMPLITUDE));
  if (at < 0) return;
  const expected = `expected numbers within ±${MAX_SAMPLE_AMPLITUDE}, full scale being ±1`;
  throw signalFault("SOUND_UNUSABLE", `sample ${at} of channel ${channel + 1} is ${samples[at]}, ${expected}`);
}
