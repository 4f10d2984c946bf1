const QUOTE = '"'.charCodeAt(0);
const BACKSLASH = "\\".charCodeAt(0);
const COMMA = ",".charCodeAt(0);
const OPENING_LIST = "[".charCodeAt(0);
const OPENING_OBJECT = "{".charCodeAt(0);
const CLOSINGS: readonly number[] = ["]", "}"].map((sign) => sign.charCodeAt(0));

/** What a JSON text holds, by its signs alone (RFC 8259, 2); of what is no JSON it is some numbers. */
export interface JsonSize {
  /** Lists and objects in each other, at most. */
  readonly depth: number;
  /** Lists and objects. */
  readonly nests: number;
  /** Of the list that has most. */
  readonly longest: number;
  /** Keys of the object that has most. */
  readonly widest: number;
  readonly values: number;
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

/**
 * Counted in one walk that keeps two numbers for each level.
 * @param deepest where the walk ends: beyond it nothing is counted
 */
export function jsonSize(text: string, deepest: number): JsonSize {
  const opened: number[] = [OPENING_LIST];
  const entries: number[] = [1];
  let [level, depth, nests, longest, widest, values] = [0, 0, 0, 0, 0, 1];
  for (let at = 0; at < text.length && depth <= deepest; at++) {
    const sign = text.charCodeAt(at);
    if (sign === QUOTE) at = endOfQuoted(text, at);
    else if (sign === COMMA) {
      values++;
      const count = ++entries[level]!;
      if (opened[level] === OPENING_LIST) longest = Math.max(longest, count);
      else widest = Math.max(widest, count);
    } else if (sign === OPENING_LIST || sign === OPENING_OBJECT) {
      nests++;
      level++;
      opened[level] = sign;
      entries[level] = 1;
      depth = Math.max(depth, level);
    } else if (CLOSINGS.includes(sign)) level = Math.max(0, level - 1);
  }
  return { depth, nests, longest, widest, values };
}
