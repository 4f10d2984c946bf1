import { WAYS_TO_SAY, type WordName } from "../vocabulary/words.ts";

const wordsIn = (text: string) => new Set(text.split(" "));

/** Words between those that say something. */
export const FILLERS = wordsIn(
  "a an the in at on with that which who and or is are be to of for from it its i me my want wants wish like should must can" +
    " sound sounds sounding tone tones pickup pickups position positions pos place places switch lever please also but one both plus" +
    " only alone there where when well nice good as possible",
);
export const DEGREES = wordsIn("very really quite rather fairly bit little more less most extra too so overly");
const NEGATIONS = wordsIn("not no never without less isn't aren't don't doesn't nor neither avoid");
const LONGEST_SAYING = Math.max(...Array.from(WAYS_TO_SAY.keys(), (said) => said.split(" ").length));

/** A word of the trade, and how many tokens say it. */
export interface Saying {
  readonly word: WordName;
  readonly length: number;
}

export function sayingAt(tokens: readonly string[], at: number): Saying | undefined {
  for (let length = Math.min(LONGEST_SAYING, tokens.length - at); length > 0; length--) {
    const word = WAYS_TO_SAY.get(tokens.slice(at, at + length).join(" "));
    if (word) return { word, length };
  }
  return undefined;
}

/** What is not wanted: a word that has a word for its opposite, or what was said, to be said the other way round. */
export type Denied = { readonly length: number } & ({ readonly word: WordName } | { readonly said: string });

/** Reads "not muddy", "not too dark", "without a boomy"; undefined where nothing is denied. */
export function deniedAt(tokens: readonly string[], at: number): Denied | undefined {
  if (!NEGATIONS.has(tokens[at]!)) return undefined;
  let from = at + 1;
  while (from < tokens.length && (DEGREES.has(tokens[from]!) || FILLERS.has(tokens[from]!))) from++;
  // "Less" before nothing that it could deny is a degree.
  if (from >= tokens.length) return DEGREES.has(tokens[at]!) ? undefined : { said: tokens[at]!, length: 1 };
  const opposite = sayingAt(["not", ...tokens.slice(from, from + LONGEST_SAYING)], 0);
  if (opposite && opposite.length > 1) return { word: opposite.word, length: from - at + opposite.length - 1 };
  const length = from - at + (sayingAt(tokens, from)?.length ?? 1);
  return { said: tokens.slice(at, at + length).join(" "), length };
}
