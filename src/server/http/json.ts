import { parse, safeParse } from "secure-json-parse";
import { faultAt, type PresolderError } from "../../errors.ts";
import { MAX_JSON_DEPTH } from "../../limits.ts";

/** Of what the parser says, which quotes the text. */
const MAX_REASON = 200;

const isNested = (value: unknown): value is object => typeof value === "object" && value !== null;

/** Level by level, since code that calls itself for every level has a stack that ends. */
function isDeeperThan(most: number, value: unknown): boolean {
  let level = [value].filter(isNested);
  for (let depth = 0; level.length > 0; depth++) {
    if (depth >= most) return true;
    level = level.flatMap((each) => Object.values(each).filter(isNested));
  }
  return false;
}

/** The same value. @throws PresolderError REQUEST_INVALID at `path` for lists and objects in each other beyond MAX_JSON_DEPTH */
export function requireShallow(value: unknown, path: string): unknown {
  if (!isDeeperThan(MAX_JSON_DEPTH, value)) return value;
  throw tooDeep(path);
}

export function tooDeep(path: string): PresolderError {
  const expected = `expected JSON with at most ${MAX_JSON_DEPTH} lists and objects in each other`;
  return faultAt("REQUEST_INVALID", path, expected);
}

function parsed(text: string, path: string): unknown {
  try {
    return parse(text);
  } catch (error) {
    // The parser calls itself for every level, and so does its search for forbidden keys.
    if (error instanceof RangeError) throw tooDeep(path);
    const forbidden = safeParse(text) === null;
    const expected = forbidden
      ? 'expected JSON without a key "__proto__", nor "constructor" with a "prototype"'
      : `expected JSON; ${(error as Error).message.slice(0, MAX_REASON)}`;
    throw faultAt("REQUEST_INVALID", path, expected);
  }
}

/**
 * JSON that somebody sent.
 * @throws PresolderError REQUEST_INVALID at `path` for what is no JSON, has a key that reaches a prototype, or is nested too deep
 */
export function parseJson(text: string, path: string): unknown {
  return requireShallow(parsed(text, path), path);
}
