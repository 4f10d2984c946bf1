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

/** Those lines in which every word of the query stands, in any order; all of them for an empty query. */
export function found(lines: readonly GuardLine[], query: string): readonly GuardLine[] {
  const wanted = spelled(query).split(" ").filter(Boolean);
  if (wanted.length === 0) return lines;
  return lines.filter(({ words }) => wanted.every((word) => words.includes(word)));
}
