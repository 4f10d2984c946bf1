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

/** What a shelf's link carries: guards as they were sent. */
export interface ShelfContent {
  readonly guards: readonly unknown[];
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
 * @throws PresolderError LIMIT_EXCEEDED where the code would be too long for an address, or its content too large
 */
export function encodeLink(content: LinkContent): string {
  return encode(content, "build", "Send the build file instead");
}

/** As `encodeLink`, for a shelf. */
export function encodeShelf(content: ShelfContent): string {
  return encode(content, "guards", "Send fewer guards, or a file");
}

function encode(content: unknown, path: string, instead: string): string {
  const json = Buffer.from(JSON.stringify(content));
  if (json.length > MAX_LINK_JSON_BYTES)
    throw faultAt(
      "LIMIT_EXCEEDED",
      path,
      `has ${json.length} bytes; expected at most ${MAX_LINK_JSON_BYTES}. ${instead}`,
    );
  const packed = deflateSync(json, { level: 9, dictionary: LINK_DICTIONARY });
  const code = VERSION + packed.toString("base64url");
  if (code.length <= MAX_LINK_CODE_CHARS) return code;
  const message = `makes a link of ${code.length} characters; expected at most ${MAX_LINK_CODE_CHARS}. ${instead}`;
  throw faultAt("LIMIT_EXCEEDED", path, message);
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

function contentOf(code: string): object {
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
  if (typeof content !== "object" || content === null) throw new Damaged("the code holds neither guard nor shelf");
  return content;
}

function buildIn(content: object): LinkContent {
  if ("guards" in content) throw new Damaged("the code holds a shelf of guards; expected that of one build file");
  if (!("build" in content)) throw new Damaged("the code holds no build file");
  const { build, view } = content as LinkContent;
  return view === undefined ? { build } : { build, view };
}

function shelfIn(content: object): ShelfContent {
  const { guards } = content as Partial<ShelfContent>;
  if (!Array.isArray(guards)) throw new Damaged("the code holds no shelf of guards");
  return { guards };
}

/** @throws PresolderError LINK_INVALID, under the field that carried the code, where it is damaged or of an unknown version */
export function decodeLink(code: string, path = "code"): LinkContent {
  return decode(code, path, buildIn);
}

/** As `decodeLink`, for a shelf. */
export function decodeShelf(code: string): ShelfContent {
  return decode(code, "code", shelfIn);
}

function decode<Content>(code: string, path: string, read: (content: object) => Content): Content {
  try {
    return read(contentOf(code));
  } catch (error) {
    if (!(error instanceof Damaged)) throw error;
    throw new PresolderError("LINK_INVALID", error.message, [{ path, message: error.message }]);
  }
}
