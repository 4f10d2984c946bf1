import { promisify } from "node:util";
import { gzip, gzipSync } from "node:zlib";
import { negotiate } from "@fastify/accept-negotiator";
import type { FastifyReply, FastifyRequest } from "fastify";

const compressed = promisify(gzip);
/** Less than this fits into one packet anyway. */
const LEAST_BYTES = 1_400;
/** More would keep a core from everybody else for a tenth of a second; the default sweep stays below. */
const MOST_BYTES = 1 << 20;
/** Up to here it is done in less than the wait for a thread, which may be at somebody's archive. */
const BYTES_AT_ONCE = 1 << 16;
/** Numbers as text lose half of themselves at the quickest level, and hardly more at the slowest. */
const LEVEL = 1;
const TEXT = /^(text\/|image\/svg\+xml|application\/([\w.-]+\+)?json)/;

const isBody = (payload: unknown): payload is string | Buffer =>
  typeof payload === "string" || Buffer.isBuffer(payload);

/** Text answers go compressed to whoever takes that (RFC 9110, 8.4 and 12.5.3); their tag is weak then, since it stands for either form. */
export async function compressTextAnswers(
  request: FastifyRequest,
  reply: FastifyReply,
  payload: unknown,
): Promise<unknown> {
  const type = String(reply.getHeader("content-type") ?? "");
  if (!isBody(payload) || !TEXT.test(type) || reply.hasHeader("content-encoding")) return payload;
  const bytes = Buffer.byteLength(payload);
  if (bytes < LEAST_BYTES || bytes > MOST_BYTES) return payload;
  reply.header("vary", "accept-encoding");
  if (negotiate(request.headers["accept-encoding"] ?? "", ["gzip"]) !== "gzip") return payload;
  const options = { level: LEVEL };
  const body = bytes <= BYTES_AT_ONCE ? gzipSync(payload, options) : await compressed(payload, options);
  const tag = reply.getHeader("etag");
  if (typeof tag === "string" && !tag.startsWith("W/")) reply.header("etag", `W/${tag}`);
  reply.header("content-encoding", "gzip").header("content-length", body.length);
  return body;
}
