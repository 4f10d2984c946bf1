import { nearestWord } from "../../../build-file/nearest.ts";
import { WAYS_TO_SAY, type WordName } from "../vocabulary/words.ts";
import type { Where } from "../wish.ts";
import { isNoPosition, PLACE_WORDS, placeOf } from "./places.ts";
import { DEGREES, deniedAt, FILLERS, sayingAt } from "./sayings.ts";
import { tokensOf } from "./tokens.ts";

/** A word that nobody knows here. */
export interface Unknown {
  readonly said: string;
  /** A word that is known, where one is near. */
  readonly nearest: string | null;
}

/** What one phrase says. */
export interface Phrase {
  readonly words: WordName[];
  readonly places: Where[];
  /** Positions that no guard has, as they were said. */
  readonly noPlaces: string[];
  readonly unknown: Unknown[];
  readonly denied: string[];
  readonly degrees: string[];
  readonly text: string;
}

/** Places first, since of words as near as one another the first is told. */
const KNOWN_TOKENS = [...PLACE_WORDS, ...WAYS_TO_SAY.keys()];

/** Reads what begins at a token. @returns how many tokens that took */
function readToken(phrase: Phrase, tokens: readonly string[], at: number): number {
  const token = tokens[at]!;
  const saying = sayingAt(tokens, at);
  if (saying) {
    phrase.words.push(saying.word);
    return saying.length;
  }
  const place = placeOf(token);
  const denied = deniedAt(tokens, at);
  if (place) phrase.places.push(place);
  else if (isNoPosition(token)) phrase.noPlaces.push(token);
  else if (denied && "word" in denied) phrase.words.push(denied.word);
  else if (denied) phrase.denied.push(denied.said);
  else if (DEGREES.has(token)) phrase.degrees.push(token);
  else if (!FILLERS.has(token)) phrase.unknown.push({ said: token, nearest: nearestWord(token, KNOWN_TOKENS) ?? null });
  return denied?.length ?? 1;
}

export function readPhrase(text: string): Phrase {
  const phrase: Phrase = {
    words: [],
    places: [],
    noPlaces: [],
    unknown: [],
    denied: [],
    degrees: [],
    text: text.trim(),
  };
  const tokens = tokensOf(text);
  for (let at = 0; at < tokens.length; ) at += readToken(phrase, tokens, at);
  return phrase;
}
