import { parse, safeParse } from "secure-json-parse";
import { faultAt } from "../../errors.ts";
import { MAX_JSON_DEPTH, MAX_JSON_NESTS, MAX_JSON_VALUES, MAX_LIST_ENTRIES, MAX_OBJECT_KEYS } from "../../limits.ts";
import { type JsonBounds, tooMuchIn } from "./json-size.ts";

/** Of what the parser says, which quotes the text. */
const MAX_REASON = 200;

const MOST: JsonBounds = {
  depth: MAX_JSON_DEPTH,
  nests: MAX_JSON_NESTS,
  entries: MAX_LIST_ENTRIES,
  keys: MAX_OBJECT_KEYS,
  values: MAX_JSON_VALUES,
};

const EXPECTED: Readonly<Record<keyof JsonBounds, string>> = {
  depth: `expected JSON with at most ${MOST.depth} lists and objects in each other`,
  nests: `the request has more than ${MOST.nests} lists and objects; expected no more`,
  entries: `has more than ${MOST.entries} entries; expected no more`,
  keys: `has more than ${MOST.keys} keys; expected no more`,
  values: `the request has more than ${MOST.values} values; expected no more`,
};

/** Before anything is made of it: a megabyte of empty lists takes a tenth of a second to read. */
function requireSmall(text: string, path: string): void {
  const tooMuch = tooMuchIn(text, MOST);
  if (tooMuch) throw faultAt("REQUEST_INVALID", tooMuch.path || path, EXPECTED[tooMuch.what]);
}

function parsed(text: string, path: string): unknown {
  try {
    return parse(text);
  } catch (error) {
    const forbidden = safeParse(text) === null;
    const expected = forbidden
      ? 'expected JSON without a key "__proto__", nor "constructor" with a "prototype"'
      : `expected JSON; ${(error as Error).message.slice(0, MAX_REASON)}`;
    throw faultAt("REQUEST_INVALID", path, expected);
  }
}

/**
 * JSON that somebody sent.
 * @throws PresolderError REQUEST_INVALID at `path` for what is no JSON, has a key that reaches a prototype, is nested too deep, or
 * has more than MAX_JSON_NESTS, MAX_JSON_VALUES, MAX_LIST_ENTRIES or MAX_OBJECT_KEYS
 */
export function parseJson(text: string, path: string): unknown {
  requireSmall(text, path);
  return parsed(text, path);
}
