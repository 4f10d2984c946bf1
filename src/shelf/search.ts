import type { GuardLine } from "./guard.ts";

/** Text in the search's own spelling: small letters without accents, "u" for micro. */
export function spelled(text: string): string {
  return text
    .normalize("NFKD")
    .replaceAll(/\p{M}/gu, "")
    .toLowerCase()
    .replaceAll("μ", "u")
    .replaceAll("ω", "ohm")
    .replaceAll(/\s+/g, " ");
}

const IN_WORD = /[\p{L}\p{N}]/u;

const NUMBER = /^\d+(\.\d+)?$/;
/** What goes on with a number. */
const MORE_NUMBER = /^\.?\d/;

/**
 * Whether a word of a text begins so: who looks for "red" does not mean "wired". A number is a whole one: who looks for guard 2 means
 * neither guard 20 nor what was made in 2026, but "22" is found in "22n".
 */
function beginsIn(text: string, word: string): boolean {
  const isNumber = NUMBER.test(word);
  for (let at = text.indexOf(word); at >= 0; at = text.indexOf(word, at + 1)) {
    const isBegin = at === 0 || !IN_WORD.test(text[at - 1]!);
    const end = at + word.length;
    if (isBegin && !(isNumber && MORE_NUMBER.test(text.slice(end, end + 2)))) return true;
  }
  return false;
}

/** Values with their units as a part's text has them: "22 nf" as "22nf", "250 kohm" as "250k", "150 ohm" as "150r", ".022" as "0.022". */
function joinedValues(query: string): string {
  return query
    .replaceAll(/(?<![\d.])\.(?=\d)/g, "0.")
    .replaceAll(/(?<=\d) (?=(?:[km]?ohms?|[km]|f|[nup]f?)(?: |$))/g, "")
    .replaceAll(/(?<=\d[km])ohms?(?= |$)/g, "")
    .replaceAll(/(?<=\d)ohms?(?= |$)/g, "r");
}

const wordsOf = (query: string) => query.split(" ").filter(Boolean);

/**
 * Those lines in which every word of the query begins some word, in any order; all of them for an empty query. A value is found with
 * and without a space before its unit.
 */
export function found(lines: readonly GuardLine[], query: string): readonly GuardLine[] {
  const asWritten = spelled(query);
  const ways = [wordsOf(asWritten), wordsOf(joinedValues(asWritten))];
  if (ways[0]!.length === 0) return lines;
  return lines.filter(({ words }) => ways.some((wanted) => wanted.every((word) => beginsIn(words, word))));
}
