import { wavFault } from "./wav-fault.ts";

/** A file's chunk: where its body stands, whole and within the file. */
export interface Chunk {
  readonly id: string;
  readonly start: number;
  readonly size: number;
}

export interface WavChunks {
  readonly format: Chunk;
  readonly data: Chunk;
  /** The length was left open and `data` reaches to the end of the file, a pad byte perhaps included. */
  readonly streamed: boolean;
}

/**
 * Tools that write to a pipe cannot come back to fill in the length and leave one near 2³¹ or 2³² instead.
 * 256 bytes are room for a length rounded down to whole sample frames.
 */
const STREAMED_FROM = 0x7fff_f000 - 256;

const OTHER_FORMATS: readonly [RegExp, string][] = [
  [/^\x89PNG/, "a PNG picture"],
  [/^\xff\xd8\xff/, "a JPEG picture"],
  [/^ID3|^\xff[\xfb\xf3\xf2]/, "MP3"],
  [/^fLaC/, "FLAC"],
  [/^OggS/, "Ogg"],
  [/^FORM....AIF/s, "AIFF"],
  [/^....ftyp/s, "an MP4 file"],
  [/^PK/, "a ZIP archive"],
  [/^RIFX/, "big-endian RIFX"],
  [/^RF64|^BW64/, "RF64, the form for files over 4 GB"],
];

/**
 * The `fmt ` and `data` chunks of a RIFF/WAVE file (Microsoft & IBM, Multimedia Programming Interface and Data Specifications 1.0, 1991).
 *
 * @throws PresolderError WAV_INVALID if it is no such file, a chunk is missing, cut short, or its length is a lie.
 */
export function wavChunks(bytes: Uint8Array): WavChunks {
  requireWave(bytes);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let format: Chunk | undefined;
  for (let at = 12; at + 8 <= bytes.length; ) {
    const id = text(bytes, at, 4);
    const size = view.getUint32(at + 4, true);
    const start = at + 8;
    if (id === "data") {
      if (!format) throw wavFault("expected a fmt chunk before the samples, found none");
      const streamed = isStreamed(view, size);
      return {
        format,
        data: { id, start, size: streamed ? bytes.length - start : checkedSize(view, start, size) },
        streamed,
      };
    }
    if (!isChunkId(id)) throw wavFault(`expected a chunk at byte ${at}, found ${hex(bytes, at)}`);
    if (start + size > bytes.length)
      throw wavFault(`the file ends inside its "${id}" chunk: ${size} bytes announced, ${bytes.length - start} there`);
    if (id === "fmt ") format = { id, start, size };
    at = start + size + (size % 2);
  }
  throw wavFault(`expected a data chunk with samples, and the file of ${bytes.length} bytes ends without one`);
}

function requireWave(bytes: Uint8Array): void {
  const head = text(bytes, 0, 12);
  if (head.startsWith("RIFF") && head.slice(8) === "WAVE") return;
  if (bytes.length === 0) throw wavFault("expected a WAV file, found an empty one");
  const other = OTHER_FORMATS.find(([pattern]) => pattern.test(head))?.[1];
  throw wavFault(`expected a WAV file (RIFF … WAVE), found ${other ?? `one that begins with ${hex(bytes, 0)}`}`);
}

function isStreamed(view: DataView, dataSize: number): boolean {
  return dataSize >= STREAMED_FROM && view.getUint32(4, true) >= STREAMED_FROM;
}

function checkedSize(view: DataView, start: number, size: number): number {
  const there = view.byteLength - start;
  if (size > there) {
    throw wavFault(
      `the header announces ${size} bytes of samples and the file holds ${there}: it is cut short or its header is wrong`,
    );
  }
  requireChunksAfter(view, start + size, Math.min(view.getUint32(4, true) + 8, view.byteLength));
  return size;
}

/** Samples beyond the announced length show as bytes that are no chunk; a few stray bytes at the end are harmless. */
function requireChunksAfter(view: DataView, end: number, riffEnd: number): void {
  const bytes = new Uint8Array(view.buffer, view.byteOffset, view.byteLength);
  // Some writers leave the pad byte out.
  const next = end % 2 === 1 && !isChunkId(text(bytes, end, 4)) ? end + 1 : end;
  if (next + 8 <= riffEnd && !isChunkId(text(bytes, next, 4))) {
    throw wavFault(
      `the header's lengths disagree: its samples end at byte ${end}, the file at ${riffEnd}, and no chunk stands between`,
    );
  }
}

function isChunkId(id: string): boolean {
  return /^[\x20-\x7e]{4}$/.test(id);
}

function text(bytes: Uint8Array, start: number, length: number): string {
  return String.fromCharCode(...bytes.subarray(start, start + length));
}

function hex(bytes: Uint8Array, start: number): string {
  return Array.from(bytes.subarray(start, start + 4), (byte) => byte.toString(16).padStart(2, "0")).join(" ");
}
