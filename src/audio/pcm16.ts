import { createDither } from "./dither.ts";
import type { Sound } from "./sound.ts";

const HEADER_BYTES = 44;

/**
 * The sound as a 16-bit WAV file, dithered; samples beyond full scale stay at its end. A plain loop, since the encoder package
 * takes as long for a file as the filtering before it.
 */
export function encodePcm16(sound: Sound): Uint8Array {
  const channels = sound.channels.length;
  const frames = sound.channels[0]!.length;
  const buffer = new ArrayBuffer(HEADER_BYTES + 2 * channels * frames);
  writeHeader(new DataView(buffer), sound.sampleRateHz, channels);
  const samples = new Int16Array(buffer, HEADER_BYTES);
  const dither = createDither();
  if (channels === 1) {
    const mono = sound.channels[0]!;
    for (let n = 0; n < frames; n++) samples[n] = quantized(mono[n]!, dither());
  } else {
    for (let n = 0, at = 0; n < frames; n++) {
      for (let channel = 0; channel < channels; channel++)
        samples[at++] = quantized(sound.channels[channel]![n]!, dither());
    }
  }
  return new Uint8Array(buffer);
}

function quantized(sample: number, dither: number): number {
  const value = Math.floor(sample * 32_768 + dither + 0.5);
  return Math.max(-32_768, Math.min(32_767, value));
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
