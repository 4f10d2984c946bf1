import { ditherSeed, nextDitherState } from "./dither.ts";
import type { Sound } from "./sound.ts";

const HEADER_BYTES = 44;

/**
 * The sound times `gain` as a 16-bit WAV file, dithered as `createDither` does; samples beyond full scale stay at its end. A plain
 * loop, since the encoder package takes longer for a file than everything before it. Null where a sample is not finite.
 */
export function encodePcm16(sound: Sound, gain: number): Uint8Array | null {
  const channels = sound.channels.length;
  const buffer = new ArrayBuffer(HEADER_BYTES + 2 * channels * sound.channels[0]!.length);
  writeHeader(new DataView(buffer), sound.sampleRateHz, channels);
  const steps = new Int16Array(buffer, HEADER_BYTES);
  const sums = sound.channels.map((samples, channel) => fill(steps, samples, channel, channels, gain));
  return sums.every(Number.isFinite) ? new Uint8Array(buffer) : null;
}

/** Writes one of the channels; answers the sum of what it wrote, which is finite where every sample is. */
function fill(steps: Int16Array, samples: Float32Array, channel: number, channels: number, gain: number): number {
  const scale = gain * 32_768;
  let state = ditherSeed(channel);
  let before = 0;
  let sum = 0;
  for (let n = 0, at = channel; n < samples.length; n++, at += channels) {
    state = nextDitherState(state);
    const number = state * 2 ** -32;
    // Lifted above zero, where cutting off the fraction is rounding to the nearest.
    let value = samples[n]! * scale + (number - before) + 32_768.5;
    before = number;
    sum += value;
    if (value < 0) value = 0;
    else if (value > 65_535) value = 65_535;
    steps[at] = (value | 0) - 32_768;
  }
  return sum;
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
