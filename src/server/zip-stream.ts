import { Zip, ZipDeflate, ZipPassThrough } from "fflate";

export interface ZipEntry {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Text shrinks to a fraction; sound hardly at all, and is stored as it is. */
  readonly compress: boolean;
}

/** Checksums are reckoned on the event loop, a few milliseconds of them at a time. */
const SLICE_BYTES = 1 << 20;

/** A ZIP archive of the entries as they come; nothing is fetched before what came before it has been taken. */
export async function* zipStream(entries: AsyncIterable<ZipEntry>): AsyncGenerator<Uint8Array> {
  const ready: Uint8Array[] = [];
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    ready.push(chunk);
  });
  for await (const { name, bytes, compress } of entries) {
    const file = compress ? new ZipDeflate(name, { level: 6 }) : new ZipPassThrough(name);
    zip.add(file);
    for (let at = 0; at === 0 || at < bytes.length; at += SLICE_BYTES) {
      file.push(bytes.subarray(at, at + SLICE_BYTES), at + SLICE_BYTES >= bytes.length);
      yield* ready.splice(0);
    }
  }
  zip.end();
  yield* ready;
}
