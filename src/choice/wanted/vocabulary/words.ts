import { KNOB_WORDS } from "./knob-words.ts";
import { LEVEL_WORDS } from "./level-words.ts";
import { TONE_WORDS } from "./tone-words.ts";
import type { TradeWord } from "./trade-word.ts";

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
