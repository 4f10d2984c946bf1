import type { Basis, SourceRule, WordsKey } from "./rule.ts";
import { ruleOf, SOURCE_RULES } from "./source-of.ts";
import { valuePaths } from "./value-paths.ts";
import { WORDS } from "./words.ts";

/** Values of a catalogue that rest on the same. */
export interface Source {
  readonly basis: Basis;
  readonly words: string;
  /** Paths into the catalogue. */
  readonly of: readonly string[];
}

/** Where every value of a catalogue comes from. */
export function sourcesOf(catalogue: object): Source[] {
  const paths = valuePaths(catalogue).map((path) => [path, ruleOf(path)] as const);
  const keys = [...new Set(SOURCE_RULES.map(({ basis, words }) => `${basis}/${words}`))];
  return keys.map((key) => {
    const [basis, words] = key.split("/") as [Basis, WordsKey];
    const isOf = (found: SourceRule | undefined) => found?.basis === basis && found.words === words;
    return { basis, words: WORDS[words], of: paths.flatMap(([path, found]) => (isOf(found) ? [path] : [])) };
  });
}
