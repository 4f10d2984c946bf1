import { promisify } from "node:util";
import { crc32, deflateRaw } from "node:zlib";
import { Zip, type ZipInputFile } from "fflate";
import { turns } from "../http/turns.ts";

export interface ZipEntry {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Text shrinks to a fraction; sound hardly at all, and is stored as it is. */
  readonly compress: boolean;
}

const STORED = 0;
const DEFLATED = 8;
/** As much goes through the event loop in one of its turns. */
const SLICE_BYTES = 1 << 18;

/** Runs beside the event loop, in Node's own pool of threads. */
const deflate = promisify(deflateRaw);

function* slicesOf(bytes: Uint8Array): Generator<Uint8Array> {
  for (let at = 0; at === 0 || at < bytes.length; at += SLICE_BYTES) yield bytes.subarray(at, at + SLICE_BYTES);
}

/** A ZIP archive of the entries as they come; nothing is fetched before what came before it has been taken. */
export async function* zipStream(entries: AsyncIterable<ZipEntry>): AsyncGenerator<Uint8Array> {
  const ready: Uint8Array[] = [];
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    ready.push(chunk);
  });
  for await (const { name, bytes, compress } of entries) {
    const packed = compress ? await deflate(bytes) : bytes;
    const compression = compress ? DEFLATED : STORED;
    const file: ZipInputFile = { filename: name, size: bytes.length, crc: compress ? crc32(bytes) : 0, compression };
    zip.add(file);
    let sent = 0;
    for (const slice of slicesOf(packed)) {
      await turns.next();
      if (!compress) file.crc = crc32(slice, file.crc);
      sent += slice.length;
      file.ondata!(null, slice as Uint8Array<ArrayBuffer>, sent === packed.length);
      yield* ready.splice(0);
    }
  }
  zip.end();
  yield* ready;
}
