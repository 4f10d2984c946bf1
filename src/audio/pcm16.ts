import { ditherSeed, nextDitherState } from "./dither.ts";
import { requireFinite, type Sound } from "./sound.ts";

const HEADER_BYTES = 44;
/** Full scale is ±32768 of them. */
const STEPS = 32_768;

/**
 * The sound times `gain` as a 16-bit WAV file, dithered; samples beyond full scale stay at its end. Not by the encoder package,
 * which takes longer for a file than everything before it.
 *
 * @throws RangeError for a sample that is not finite.
 */
export function encodePcm16(sound: Sound, gain: number): Uint8Array {
  const channels = sound.channels.length;
  const buffer = new ArrayBuffer(HEADER_BYTES + 2 * channels * sound.channels[0]!.length);
  writeHeader(new DataView(buffer), sound.sampleRateHz, channels);
  const steps = new Int16Array(buffer, HEADER_BYTES);
  const finite = sound.channels.map((samples, channel) =>
    writeDithered(steps, samples, gain * STEPS, channel, channels),
  );
  if (!finite.every(Boolean)) requireFinite(sound);
  return new Uint8Array(buffer);
}

/**
 * The samples times `scale` as every `stride`th of `steps` from `first` on, with triangular dither, −1 to +1 step: it makes the
 * rounding error's mean and power independent of the sound (Lipshitz, Wannamaker & Vanderkooy, Quantization and Dither, J. AES
 * 40(5), 1992). As the difference of each number of a flat stream from the one before it takes one number a sample, and its noise
 * lies higher, where the ear is duller.
 *
 * @returns whether every sample is finite
 */
function writeDithered(
  steps: Int16Array,
  samples: Float32Array,
  scale: number,
  first: number,
  stride: number,
): boolean {
  let state = ditherSeed(first);
  let before = 0;
  let sum = 0;
  for (let n = 0, at = first; n < samples.length; n++, at += stride) {
    state = nextDitherState(state);
    const number = state * 2 ** -32;
    const sample = samples[n]! * scale;
    sum += sample;
    // Not `Math.round`: its care for −0 makes the loop five times as long.
    const step = sample + (number - before) + 0.5;
    before = number;
    steps[at] = step < -32_768 ? -32_768 : step < 32_768 ? Math.floor(step) : 32_767;
  }
  return Number.isFinite(sum);
}

function writeHeader(view: DataView, sampleRateHz: number, channels: number): void {
  const words = (at: number, ...values: number[]) =>
    values.forEach((value, i) => void view.setUint32(at + 4 * i, value, true));
  const text = (at: number, id: string) => void [...id].forEach((c, i) => void view.setUint8(at + i, c.charCodeAt(0)));
  text(0, "RIFF");
  words(4, view.byteLength - 8);
  text(8, "WAVEfmt ");
  words(16, 16, 1 | (channels << 16), sampleRateHz, 2 * channels * sampleRateHz, (2 * channels) | (16 << 16));
  text(36, "data");
  words(40, view.byteLength - HEADER_BYTES);
}
