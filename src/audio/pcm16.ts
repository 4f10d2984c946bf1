import { writeDithered } from "./dithered-steps.ts";
import type { Sound } from "./sound.ts";

const HEADER_BYTES = 44;

/**
 * The sound times `gain` as a 16-bit WAV file, dithered as `createDither` does; samples beyond full scale stay at its end. Not by
 * the encoder package, which takes longer for a file than everything before it. Null where a sample is not finite.
 */
export function encodePcm16(sound: Sound, gain: number): Uint8Array | null {
  const channels = sound.channels.length;
  const buffer = new ArrayBuffer(HEADER_BYTES + 2 * channels * sound.channels[0]!.length);
  writeHeader(new DataView(buffer), sound.sampleRateHz, channels);
  const steps = new Int16Array(buffer, HEADER_BYTES);
  const finite = sound.channels.map((samples, channel) =>
    writeDithered(steps, samples, gain, { channel, stride: channels }),
  );
  return finite.every(Boolean) ? new Uint8Array(buffer) : null;
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
