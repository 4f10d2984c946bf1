import { Readable } from "node:stream";
import type { FastifyReply, FastifyRequest } from "fastify";
import { turns } from "../turns.ts";

/** As much is written in one turn of the event loop: to copy it takes a fraction of a millisecond. */
const SLICE_BYTES = 1 << 18;

async function* slicesOf(bytes: Buffer): AsyncGenerator<Buffer> {
  for (let at = 0; at < bytes.length; at += SLICE_BYTES) {
    await turns.next();
    yield bytes.subarray(at, at + SLICE_BYTES);
  }
}

/** Long answers go out in slices, so that somebody else's short one waits for one slice at most. */
export async function writeInTurns(request: FastifyRequest, reply: FastifyReply, payload: unknown): Promise<unknown> {
  if (!Buffer.isBuffer(payload) || payload.length <= SLICE_BYTES || request.method === "HEAD") return payload;
  reply.header("content-length", payload.length);
  return Readable.from(slicesOf(payload), { objectMode: false });
}
