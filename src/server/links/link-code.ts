import { deflateSync, inflateRawSync, inflateSync } from "node:zlib";
import { faultAt, PresolderError } from "../../errors.ts";
import { MAX_LINK_CODE_CHARS, MAX_LINK_JSON_BYTES } from "../../limits.ts";
import { parseJson } from "../http/json.ts";
import { LINK_DICTIONARY } from "./link-dictionary.ts";

/** What a link carries: a build file as it was written, and how the page looked at it. */
export interface LinkContent {
  readonly build: unknown;
  readonly view?: unknown;
}

/** First character of every code; a later format gets another one and all stay readable. */
const VERSION = "2";

const BOUND = { maxOutputLength: MAX_LINK_JSON_BYTES };
/** How each version is unpacked: the first had neither dictionary nor checksum. */
const UNPACKERS: Readonly<Record<string, (packed: Buffer) => Buffer>> = {
  "1": (packed) => inflateRawSync(packed, BOUND),
  [VERSION]: (packed) => inflateSync(packed, { ...BOUND, dictionary: LINK_DICTIONARY }),
};

const CODE_PATTERN = /^[A-Za-z0-9_-]+$/;

class Damaged extends Error {}

/**
 * The code of a link: a version character, then base64url (RFC 4648) of the JSON in zlib's format (RFC 1950), which has a
 * checksum and here a preset dictionary.
 * @throws PresolderError LIMIT_EXCEEDED where the code would be too long for an address
 */
export function encodeLink(content: LinkContent): string {
  const packed = deflateSync(JSON.stringify(content), { level: 9, dictionary: LINK_DICTIONARY });
  const code = VERSION + packed.toString("base64url");
  if (code.length <= MAX_LINK_CODE_CHARS) return code;
  const message = `makes a link of ${code.length} characters; expected at most ${MAX_LINK_CODE_CHARS}. Send the build file instead`;
  throw faultAt("LIMIT_EXCEEDED", "build", message);
}

function unpack(unpacker: (packed: Buffer) => Buffer, code: string): string {
  try {
    return unpacker(Buffer.from(code.slice(1), "base64url")).toString("utf8");
  } catch {
    throw new Damaged("the code is damaged; it may have been cut short when it was copied");
  }
}

function parse(json: string): unknown {
  try {
    return parseJson(json, "code");
  } catch {
    throw new Damaged("the code is damaged; what it holds is not JSON");
  }
}

function decode(code: string): LinkContent {
  if (code.length > MAX_LINK_CODE_CHARS)
    throw new Damaged(`the code has ${code.length} characters; expected at most ${MAX_LINK_CODE_CHARS}`);
  if (!CODE_PATTERN.test(code))
    throw new Damaged("the code has characters that no code has; expected letters, digits, - and _");
  const version = code.charAt(0);
  const unpacker = Object.hasOwn(UNPACKERS, version) ? UNPACKERS[version] : undefined;
  if (!unpacker) {
    const known = Object.keys(UNPACKERS).join(" or ");
    throw new Damaged(`the code begins with "${version}", a version this service does not know; expected ${known}`);
  }
  const content = parse(unpack(unpacker, code));
  if (typeof content !== "object" || content === null || !("build" in content))
    throw new Damaged("the code holds no build file");
  const { build, view } = content as LinkContent;
  return view === undefined ? { build } : { build, view };
}

/** @throws PresolderError LINK_INVALID, under the field that carried the code, where it is damaged or of an unknown version */
export function decodeLink(code: string, path = "code"): LinkContent {
  try {
    return decode(code);
  } catch (error) {
    if (!(error instanceof Damaged)) throw error;
    throw new PresolderError("LINK_INVALID", error.message, [{ path, message: error.message }]);
  }
}
