import { MAX_AUDIO_CHANNELS, MAX_SAMPLE_RATE_HZ, MIN_SAMPLE_RATE_HZ } from "../limits.ts";
import type { Chunk } from "./riff.ts";
import { signalFault, wavFault } from "./wav-fault.ts";

export type SampleKind = "int8" | "int16" | "int24" | "int32" | "float32" | "float64";

export interface WavFormat {
  readonly kind: SampleKind;
  readonly channels: number;
  readonly sampleRateHz: number;
  readonly bytesPerSample: number;
}

const INTEGER = 1;
const FLOAT = 3;
const EXTENSIBLE = 0xfffe;
const KINDS: Readonly<Record<number, Readonly<Record<number, SampleKind>>>> = {
  [INTEGER]: { 8: "int8", 16: "int16", 24: "int24", 32: "int32" },
  [FLOAT]: { 32: "float32", 64: "float64" },
};
const CODEC_NAMES: Readonly<Record<number, string>> = {
  2: "MS ADPCM",
  6: "A-law",
  7: "µ-law",
  17: "IMA ADPCM",
  49: "GSM 6.10",
  85: "MP3",
};

/** Bytes 2 to 15 of the GUIDs that stand for the plain format tags (Microsoft, WAVEFORMATEXTENSIBLE). */
const TAG_GUID_TAIL = [0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71];

/**
 * What the `fmt ` chunk says.
 *
 * @throws PresolderError WAV_INVALID for another codec or numbers that contradict each other, LIMIT_EXCEEDED for channels or rate.
 */
export function wavFormat(bytes: Uint8Array, chunk: Chunk): WavFormat {
  if (chunk.size < 16) throw wavFault(`the fmt chunk has ${chunk.size} bytes, expected at least 16`);
  const view = new DataView(bytes.buffer, bytes.byteOffset + chunk.start, chunk.size);
  const channels = view.getUint16(2, true);
  const sampleRateHz = view.getUint32(4, true);
  const blockAlign = view.getUint16(12, true);
  const bits = view.getUint16(14, true);
  const tag = formatTag(view, chunk.size);
  const kind = KINDS[tag]?.[bits];
  if (!kind)
    throw wavFault(`expected 8, 16, 24 or 32-bit integers or 32 or 64-bit floats, found ${bits}-bit ${codecName(tag)}`);
  requireInRange(channels, sampleRateHz);
  const bytesPerSample = bits / 8;
  if (blockAlign !== channels * bytesPerSample) {
    throw wavFault(
      `the fmt chunk says ${blockAlign} bytes a frame, and ${channels} channels of ${bits} bits make ${channels * bytesPerSample}`,
    );
  }
  return { kind, channels, sampleRateHz, bytesPerSample };
}

function formatTag(view: DataView, size: number): number {
  const tag = view.getUint16(0, true);
  if (tag !== EXTENSIBLE) return tag;
  if (size < 40) throw wavFault(`the extensible fmt chunk has ${size} bytes, expected 40`);
  const standsForTag = TAG_GUID_TAIL.every((byte, i) => view.getUint8(26 + i) === byte);
  if (!standsForTag)
    throw wavFault("the extensible fmt chunk names a codec of its own, expected integer or float samples");
  return view.getUint16(24, true);
}

function codecName(tag: number): string {
  if (tag === INTEGER) return "integers";
  if (tag === FLOAT) return "floats";
  return CODEC_NAMES[tag] ?? `samples of format ${tag}`;
}

function requireInRange(channels: number, sampleRateHz: number): void {
  if (channels === 0) throw wavFault("the fmt chunk says 0 channels, expected 1 or 2");
  if (channels > MAX_AUDIO_CHANNELS)
    throw signalFault("LIMIT_EXCEEDED", `${channels} channels, expected at most ${MAX_AUDIO_CHANNELS}`);
  if (sampleRateHz < MIN_SAMPLE_RATE_HZ || sampleRateHz > MAX_SAMPLE_RATE_HZ) {
    const range = `${MIN_SAMPLE_RATE_HZ} to ${MAX_SAMPLE_RATE_HZ} Hz`;
    throw signalFault("LIMIT_EXCEEDED", `a sample rate of ${sampleRateHz} Hz, expected ${range}`);
  }
}
