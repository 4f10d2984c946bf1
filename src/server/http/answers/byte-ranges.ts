import type { FastifyReply, FastifyRequest } from "fastify";

export interface ByteRange {
  readonly from: number;
  /** The last byte, itself included. */
  readonly to: number;
}

/**
 * The one range of bytes that a Range header asks for (RFC 9110, 14.2). Undefined where it asks for none, for several or for
 * another unit, which may all be answered with the whole; null where the range lies outside.
 */
export function readRange(header: string | undefined, length: number): ByteRange | null | undefined {
  const match = /^bytes=(\d*)-(\d*)$/.exec(header?.trim() ?? "");
  if (!match) return undefined;
  const [, first, last] = match as unknown as [string, string, string];
  if (first === "" && last === "") return undefined;
  if (first === "") {
    const suffix = Number(last);
    return suffix === 0 ? null : { from: Math.max(0, length - suffix), to: length - 1 };
  }
  const from = Number(first);
  const to = last === "" ? length - 1 : Math.min(Number(last), length - 1);
  if (last !== "" && Number(last) < from) return undefined;
  return from >= length ? null : { from, to };
}

/** The same bytes as a Buffer, not copied. */
export function asBuffer(bytes: Uint8Array): Buffer {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

/**
 * Sends bytes, or the range of them that was asked for. `If-Range` with another tag gets the whole (RFC 9110, 13.1.5).
 * @throws Error with status 416 for a range outside
 */
export function sendBytes(request: FastifyRequest, reply: FastifyReply, bytes: Uint8Array): FastifyReply {
  const buffer = asBuffer(bytes);
  reply.header("accept-ranges", "bytes");
  const condition = request.headers["if-range"];
  const sameVersion = condition === undefined || condition === reply.getHeader("etag");
  const range = sameVersion ? readRange(request.headers.range, buffer.length) : undefined;
  if (range === undefined) return reply.send(buffer);
  if (range === null) {
    reply.header("content-range", `bytes */${buffer.length}`);
    throw Object.assign(new Error(`the range lies outside the ${buffer.length} bytes there are`), { statusCode: 416 });
  }
  reply.code(206).header("content-range", `bytes ${range.from}-${range.to}/${buffer.length}`);
  return reply.send(buffer.subarray(range.from, range.to + 1));
}
