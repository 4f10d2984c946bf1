import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import type { FastifyReply, FastifyRequest } from "fastify";
import { PATHS } from "./paths.ts";

/** An answer that changes only with the service's own version: any cache may keep it for an hour and ask again by its tag. */
export const CACHED_FOR_A_WHILE = "public, max-age=3600";

/** Stands for the code that computes: the worker's bundle names its chunks by their content. */
function codeRevision(): string {
  return createHash("sha256").update(readFileSync(PATHS.worker)).digest("base64url").slice(0, 12);
}

let revision: string | undefined;

/** A strong validator (RFC 9110, 8.8.3) for an answer that depends on nothing but the address and the code. */
export function tagOfAddress(url: string): string {
  revision ??= codeRevision();
  return `"${createHash("sha256").update(`${revision} ${url}`).digest("base64url").slice(0, 22)}"`;
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
