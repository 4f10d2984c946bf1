const QUOTE = '"'.charCodeAt(0);
const BACKSLASH = "\\".charCodeAt(0);
const COMMA = ",".charCodeAt(0);
const OPENING_LIST = "[".charCodeAt(0);
const OPENING_OBJECT = "{".charCodeAt(0);
const CLOSINGS: readonly number[] = ["]", "}"].map((sign) => sign.charCodeAt(0));

export interface JsonBounds {
  /** Lists and objects in each other. */
  readonly depth: number;
  /** Lists and objects. */
  readonly nests: number;
  /** Of one list. */
  readonly entries: number;
  /** Of one object. */
  readonly keys: number;
  readonly values: number;
}

export interface TooMuch {
  readonly what: keyof JsonBounds;
  /** Where, as faults have it; empty for the text as a whole. */
  readonly path: string;
}

interface Level {
  readonly opening: number;
  entries: number;
  /** Where the last text in quotes begins: of an object, the key of what stands in it next. */
  quoted: number;
}

/** Where a text in quotes ends that begins at `start`, or the end of everything. */
function endOfQuoted(text: string, start: number): number {
  for (let at = start + 1; at < text.length; at++) {
    const sign = text.charCodeAt(at);
    if (sign === QUOTE) return at;
    if (sign === BACKSLASH) at++;
  }
  return text.length;
}

/** @param inner what stands in these levels, its own left out */
function pathOf(text: string, inner: readonly Level[]): string {
  return inner
    .map(({ opening, entries, quoted }) =>
      opening === OPENING_LIST ? String(entries - 1) : text.slice(quoted + 1, endOfQuoted(text, quoted)),
    )
    .join(".");
}

/**
 * The first of the bounds that a JSON text goes beyond, by its signs alone (RFC 8259, 2), in one walk that makes nothing of them.
 * Of what is no JSON it says anything.
 */
export function tooMuchIn(text: string, most: JsonBounds): TooMuch | undefined {
  const levels: Level[] = [];
  let level: Level | undefined;
  let [nests, values] = [0, 1];
  const found = (what: keyof JsonBounds, outer = levels.slice(0, -1)): TooMuch => ({ what, path: pathOf(text, outer) });
  for (let at = 0; at < text.length; at++) {
    const sign = text.charCodeAt(at);
    if (sign === QUOTE) {
      if (level) level.quoted = at;
      at = endOfQuoted(text, at);
    } else if (sign === COMMA && level) {
      level.entries++;
      if (++values > most.values) return found("values", levels.slice(0, 1));
      const isList = level.opening === OPENING_LIST;
      if (level.entries > (isList ? most.entries : most.keys)) return found(isList ? "entries" : "keys");
    } else if (sign === OPENING_LIST || sign === OPENING_OBJECT) {
      if (levels.length === most.depth) return found("depth", []);
      if (++nests > most.nests) return found("nests", levels.slice(0, 1));
      level = { opening: sign, entries: 1, quoted: at };
      levels.push(level);
    } else if (CLOSINGS.includes(sign)) {
      levels.pop();
      level = levels.at(-1);
    }
  }
  return undefined;
}
