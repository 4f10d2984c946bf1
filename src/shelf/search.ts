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

/** Whether a word of a text begins so: who looks for "red" does not mean "wired". */
function beginsIn(text: string, word: string): boolean {
  for (let at = text.indexOf(word); at >= 0; at = text.indexOf(word, at + 1))
    if (at === 0 || !IN_WORD.test(text[at - 1]!)) return true;
  return false;
}

/** Those lines in which every word of the query begins some word, in any order; all of them for an empty query. */
export function found(lines: readonly GuardLine[], query: string): readonly GuardLine[] {
  const wanted = spelled(query).split(" ").filter(Boolean);
  if (wanted.length === 0) return lines;
  return lines.filter(({ words }) => wanted.every((word) => beginsIn(words, word)));
}
