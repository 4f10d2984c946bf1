import { parse, safeParse } from "secure-json-parse";
import { faultAt, type PresolderError } from "../../errors.ts";
import { MAX_JSON_DEPTH, MAX_JSON_NESTS, MAX_JSON_VALUES, MAX_LIST_ENTRIES, MAX_OBJECT_KEYS } from "../../limits.ts";
import { jsonSize } from "./json-size.ts";

/** Of what the parser says, which quotes the text. */
const MAX_REASON = 200;

function tooDeep(path: string): PresolderError {
  const expected = `expected JSON with at most ${MAX_JSON_DEPTH} lists and objects in each other`;
  return faultAt("REQUEST_INVALID", path, expected);
}

/** Before anything is made of it: a megabyte of empty lists takes a tenth of a second to read. */
function requireSmall(text: string, path: string): void {
  const { depth, nests, longest, widest, values } = jsonSize(text, MAX_JSON_DEPTH);
  if (depth > MAX_JSON_DEPTH) throw tooDeep(path);
  const tooMuch = (found: string, most: number) =>
    faultAt("REQUEST_INVALID", path, `${found}; expected at most ${most}`);
  if (nests > MAX_JSON_NESTS) throw tooMuch(`has ${nests} lists and objects`, MAX_JSON_NESTS);
  if (longest > MAX_LIST_ENTRIES) throw tooMuch(`holds a list with ${longest} entries`, MAX_LIST_ENTRIES);
  if (widest > MAX_OBJECT_KEYS) throw tooMuch(`holds an object with ${widest} keys`, MAX_OBJECT_KEYS);
  if (values > MAX_JSON_VALUES) throw tooMuch(`has ${values} values`, MAX_JSON_VALUES);
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
