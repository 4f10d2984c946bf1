import type { InjectOptions, LightMyRequestResponse } from "fastify";
import { unzipSync } from "fflate";

/** Numbers that did not come out: JSON turns NaN and Infinity into null among numbers. */
function findHole(value: unknown, path = ""): string | undefined {
  if (Array.isArray(value)) {
    if (value.some((each) => typeof each === "number") && value.includes(null)) return `${path}: null among numbers`;
    for (const [index, each] of value.entries()) {
      const found = findHole(each, `${path}.${index}`);
      if (found !== undefined) return found;
    }
  } else if (typeof value === "object" && value !== null) {
    for (const [key, each] of Object.entries(value)) {
      const found = findHole(each, `${path}.${key}`);
      if (found !== undefined) return found;
    }
  }
  return undefined;
}

function findBadSample(wav: Uint8Array): string | undefined {
  const view = new DataView(wav.buffer, wav.byteOffset, wav.byteLength);
  if (view.getUint16(20, true) !== 3 || view.getUint16(34, true) !== 32) return undefined;
  for (let at = 44; at + 4 <= wav.length; at += 4) {
    if (!Number.isFinite(view.getFloat32(at, true)) && at >= 60)
      return `a sample at byte ${at} is ${view.getFloat32(at, true)}`;
  }
  return undefined;
}

function findInArchive(zip: Uint8Array): string | undefined {
  const files = unzipSync(zip);
  for (const [name, bytes] of Object.entries(files)) {
    if (name.endsWith(".wav")) {
      const found = findBadSample(bytes);
      if (found !== undefined) return `${name}: ${found}`;
    } else if (name.endsWith(".csv") && /NaN|Infinity/.test(Buffer.from(bytes).toString())) return `${name}: no number`;
    else if (name.endsWith(".json")) {
      const found = findHole(JSON.parse(Buffer.from(bytes).toString()));
      if (found !== undefined) return `${name}: ${found}`;
    }
  }
  return undefined;
}

/** Fields that echo what was sent, and may hold whatever the sender put among their numbers. */
const ECHOING = ["/api/expand", "/api/link"];

/** What is wrong with an answer, whatever was asked; undefined where nothing is. */
export function faultIn(asked: InjectOptions, answer: LightMyRequestResponse): string | undefined {
  const url = String(asked.url);
  const { statusCode, headers, rawPayload } = answer;
  if (statusCode >= 500) return `status ${statusCode}: ${answer.payload.slice(0, 300)}`;
  const { etag: _random, ...told } = headers;
  if (/NaN|Infinity|undefined/.test(JSON.stringify(told))) return `headers: ${JSON.stringify(headers)}`;
  const type = String(headers["content-type"] ?? "");
  if (
    statusCode >= 400 &&
    !type.startsWith("application/problem+json") &&
    !url.startsWith("/b/") &&
    statusCode !== 416
  ) {
    return `a refusal of type ${type}: ${answer.payload.slice(0, 200)}`;
  }
  if (asked.method === "HEAD" || statusCode === 204 || statusCode === 304) return undefined;
  if (type.includes("json")) {
    const body: unknown = JSON.parse(answer.payload);
    if (statusCode >= 400) {
      const { status, title, type: kind } = body as Record<string, unknown>;
      return status === statusCode && typeof title === "string" && typeof kind === "string"
        ? undefined
        : "no problem details";
    }
    return ECHOING.some((path) => url.startsWith(path)) ? undefined : findHole(body);
  }
  if (type.startsWith("audio/wav") && statusCode === 200) return findBadSample(rawPayload);
  return type.startsWith("application/zip") ? findInArchive(rawPayload) : undefined;
}
