import { type Phrase, readPhrase, type Unknown } from "./reading/phrase.ts";
import { POSITIONS_THERE } from "./reading/places.ts";
import { phrasesOf } from "./reading/tokens.ts";
import type { WordName } from "./vocabulary/words.ts";
import { askFor, type Where, type Wish, whereKey } from "./wish.ts";

export interface Parsed {
  readonly wishes: readonly Wish[];
  readonly unknown: readonly Unknown[];
  /** Positions that no guard has, as they were said; what was wished for there alone is no wish. */
  readonly noPlaces: readonly string[];
  /** Places of which nothing was wished, and what was not heeded. */
  readonly notes: readonly string[];
}

/** "Balanced" of no position means all of them; anything else of no position means one or another. */
function usualPlace(words: readonly WordName[]): Where {
  return { kind: words.every((word) => word === "balanced") ? "everywhere" : "anywhere" };
}

/** Where a phrase's words are wished for. */
function placesOf({ places, noPlaces, words }: Phrase): readonly Where[] {
  if (places.length > 0) return places;
  return noPlaces.length > 0 ? [] : [usualPlace(words)];
}

/** What is wrong with a position that no guard has. */
export function noPlaceText(said: string): string {
  return `“${said}” is no position; ${POSITIONS_THERE}`;
}

function notesOf({ words, places, noPlaces, degrees, denied, unknown, text }: Phrase): string[] {
  const isIdle = places.length > 0 && words.length + unknown.length + denied.length === 0;
  return [
    ...(isIdle ? [`Nothing is wished for in “${text}”.`] : []),
    ...noPlaces.map((said) => `${noPlaceText(said)}.`),
    ...degrees.map((degree) => `“${degree}” is not heeded: change the target's numbers instead.`),
    ...denied.map((said) => `“${said}”: say what it should be instead.`),
  ];
}

/**
 * Wishes in plain words, phrase by phrase: "glassy 4, fat bridge that cleans up, hum-free 2". Every word of a phrase is wished for in
 * every place that it names.
 */
export function parseWishes(text: string): Parsed {
  const phrases = phrasesOf(text).map(readPhrase);
  const byPlace = new Map<string, { where: Where; words: Set<WordName> }>();
  for (const phrase of phrases) {
    if (phrase.words.length === 0) continue;
    for (const where of placesOf(phrase)) {
      const key = whereKey(where);
      const known = byPlace.get(key) ?? { where, words: new Set<WordName>() };
      for (const word of phrase.words) known.words.add(word);
      byPlace.set(key, known);
    }
  }
  return {
    wishes: Array.from(byPlace.values(), ({ where, words }) => ({
      where,
      asks: Array.from(words, (word) => askFor(word)),
    })),
    unknown: phrases.flatMap(({ unknown, denied }) => [...unknown, ...denied.map((said) => ({ said, nearest: null }))]),
    noPlaces: phrases.flatMap(({ noPlaces }) => noPlaces),
    notes: phrases.flatMap(notesOf),
  };
}
