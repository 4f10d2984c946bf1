import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import type { FastifyReply, FastifyRequest } from "fastify";
import { PATHS } from "../../paths.ts";

/** An answer that changes only with the service's own version: any cache may keep it for an hour and ask again by its tag. */
export const CACHED_FOR_A_WHILE = "public, max-age=3600";

/** 132 bits of SHA-256, in characters that a header may hold. */
function digest(data: string | Buffer): string {
  return createHash("sha256").update(data).digest("base64url").slice(0, 22);
}

/** Stands for the code that computes: the worker's bundle names its chunks by their content. */
function codeRevision(): string {
  return digest(readFileSync(PATHS.workerCode));
}

let revision: string | undefined;

/** A strong validator (RFC 9110, 8.8.3) for an answer that depends on nothing but the address and the code. */
export function tagOfAddress(url: string): string {
  revision ??= codeRevision();
  return `"${digest(`${revision} ${url}`)}"`;
}

function names(header: string | undefined, tag: string): boolean {
  if (header === undefined) return false;
  return header.trim() === "*" || header.split(",").some((each) => each.trim().replace(/^W\//, "") === tag);
}

/** Sets the headers of a cacheable answer; true where the caller already has it and is to be told 304. */
export function isFresh(request: FastifyRequest, reply: FastifyReply, tag: string): boolean {
  reply.header("etag", tag).header("cache-control", CACHED_FOR_A_WHILE);
  return names(request.headers["if-none-match"], tag);
}

/** Tags every text answer to a GET by its content, so that asking again costs a 304 and no body. */
export async function tagTextAnswers(request: FastifyRequest, reply: FastifyReply, payload: unknown): Promise<unknown> {
  const isTaggable = request.method === "GET" && reply.statusCode === 200 && typeof payload === "string";
  if (!isTaggable || reply.hasHeader("etag") || !reply.hasHeader("cache-control")) return payload;
  const tag = `"${digest(payload)}"`;
  reply.header("etag", tag);
  if (!names(request.headers["if-none-match"], tag)) return payload;
  reply.code(304).removeHeader("content-length");
  return null;
}
