import type { FigureName, Range } from "../figures.ts";
import { LEVEL_WORDS } from "./level-words.ts";
import { KNOB_WORDS } from "./knob-words.ts";
import { TONE_WORDS } from "./tone-words.ts";

/** A word of the trade as something that can be measured. */
export interface TradeWord {
  /** Other ways to say it, lower case. */
  readonly also: readonly string[];
  /** What is meant, for a person. */
  readonly meaning: string;
  readonly targets: readonly Range[];
  /** Where the meaning and its numbers come from. */
  readonly source: string;
}

const WORDS = { ...TONE_WORDS, ...LEVEL_WORDS, ...KNOB_WORDS } as const satisfies Readonly<Record<string, TradeWord>>;

export type WordName = keyof typeof WORDS;
export const WORD_NAMES = Object.keys(WORDS) as [WordName, ...WordName[]];

export function tradeWord(name: WordName): TradeWord {
  return WORDS[name];
}

/** Every way to say a word, and the word. */
export const WAYS_TO_SAY: ReadonlyMap<string, WordName> = new Map(
  WORD_NAMES.flatMap((name) => [name, ...WORDS[name].also].map((said) => [said.replaceAll("-", " "), name] as const)),
);

/** Figures that a word is measured by. */
export function figuresOf(name: WordName): readonly FigureName[] {
  return WORDS[name].targets.map(({ figure }) => figure);
}
