import type { WORDS } from "./words.ts";

/** How sure a value is, surest first. */
export const BASES = ["measured", "published", "common practice", "from memory"] as const;

export type Basis = (typeof BASES)[number];
export type WordsKey = keyof typeof WORDS;

/**
 * Where the values at some paths of the catalogue come from. `*` is any one step of the path, `a|b` either, `**` one step or more to
 * the end. Of the rules that fit a path the first holds.
 */
export interface SourceRule {
  readonly of: string;
  readonly basis: Basis;
  readonly words: WordsKey;
}

export function rule(of: string, basis: Basis, words: WordsKey): SourceRule {
  return { of, basis, words };
}
