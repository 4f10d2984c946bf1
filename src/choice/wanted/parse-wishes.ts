import { nearestWord } from "../../build-file/nearest.ts";
import { WAYS_TO_SAY, type WordName } from "./vocabulary/words.ts";
import { askFor, type Where, type Wish, whereKey } from "./wish.ts";

/** A word that nobody knows here. */
export interface Unknown {
  readonly said: string;
  /** A word that is known, where one is near. */
  readonly nearest: string | null;
}

export interface Parsed {
  readonly wishes: readonly Wish[];
  readonly unknown: readonly Unknown[];
  /** Places of which nothing was wished, and what was not heeded. */
  readonly notes: readonly string[];
}

const PICKUPS: Readonly<Record<string, string>> = {
  bridge: "bridge",
  middle: "middle",
  mid: "middle",
  neck: "neck",
};
const EVERYWHERE = new Set(["everywhere", "all", "every", "throughout", "always", "anyway"]);
const ANYWHERE = new Set(["anywhere", "somewhere", "some"]);
const FILLERS = new Set(
  (
    "a an the in at on with that which who and or is are be to of for from it its i me my want wants wish like should must can" +
    " sound sounds sounding tone tones pickup pickups position positions pos place places switch lever please also but one both plus" +
    " only alone there where when well nice good"
  ).split(" "),
);
const DEGREES = new Set([
  "very",
  "really",
  "quite",
  "rather",
  "fairly",
  "bit",
  "little",
  "more",
  "less",
  "most",
  "extra",
  "too",
]);
const NEGATIONS = new Set(["not", "no", "never", "without", "less"]);
const LONGEST_SAYING = Math.max(...Array.from(WAYS_TO_SAY.keys(), (said) => said.split(" ").length));
/** No lever, toggle or rotary in use has more. */
const MOST_POSITIONS = 12;

interface Phrase {
  readonly words: WordName[];
  readonly places: Where[];
  readonly unknown: Unknown[];
  readonly degrees: string[];
  readonly text: string;
}

/** Places first, since of words as near as one another the first is told. */
const KNOWN_TOKENS = [...Object.keys(PICKUPS), "position", "everywhere", "anywhere", ...WAYS_TO_SAY.keys()];

/** "bridge + middle" as one token, since together they are another sound than either. */
const tokensOf = (text: string) =>
  text
    .toLowerCase()
    .replaceAll("-", " ")
    .replace(/\s*[+&/]\s*/g, "+")
    .match(/[\p{L}\d+']+/gu) ?? [];

function sayingAt(tokens: readonly string[], at: number): { word: WordName; length: number } | undefined {
  for (let length = Math.min(LONGEST_SAYING, tokens.length - at); length > 0; length--) {
    const word = WAYS_TO_SAY.get(tokens.slice(at, at + length).join(" "));
    if (word) return { word, length };
  }
  return undefined;
}

function placeOf(token: string): Where | undefined {
  const position = /^(?:p|pos|position)?(\d{1,2})$/.exec(token)?.[1];
  if (position !== undefined && Number(position) >= 1 && Number(position) <= MOST_POSITIONS)
    return { kind: "position", position: Number(position) };
  const pickups = token.split("+").map((name) => (Object.hasOwn(PICKUPS, name) ? PICKUPS[name]! : undefined));
  if (pickups.every((name) => name !== undefined)) return { kind: "pickups", pickups: [...new Set(pickups)] };
  if (EVERYWHERE.has(token)) return { kind: "everywhere" };
  return ANYWHERE.has(token) ? { kind: "anywhere" } : undefined;
}

function readPhrase(text: string): Phrase {
  const phrase: Phrase = { words: [], places: [], unknown: [], degrees: [], text: text.trim() };
  const tokens = tokensOf(text);
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at]!;
    const saying = sayingAt(tokens, at);
    if (saying) {
      phrase.words.push(saying.word);
      at += saying.length - 1;
      continue;
    }
    const place = placeOf(token);
    if (place) phrase.places.push(place);
    else if (NEGATIONS.has(token) && sayingAt(tokens, at + 1)) {
      const { length } = sayingAt(tokens, at + 1)!;
      phrase.unknown.push({ said: tokens.slice(at, at + 1 + length).join(" "), nearest: null });
      at += length;
    } else if (DEGREES.has(token)) phrase.degrees.push(token);
    else if (!FILLERS.has(token))
      phrase.unknown.push({ said: token, nearest: nearestWord(token, KNOWN_TOKENS) ?? null });
  }
  return phrase;
}

/** "Balanced" of no position means all of them; anything else of no position means one or another. */
function usualPlace(words: readonly WordName[]): Where {
  return { kind: words.every((word) => word === "balanced") ? "everywhere" : "anywhere" };
}

function notesOf({ words, places, degrees, unknown, text }: Phrase): string[] {
  const idle = places.length > 0 && words.length === 0 && unknown.length === 0;
  return [
    ...(idle ? [`Nothing is wished for in “${text}”.`] : []),
    ...degrees.map((degree) => `“${degree}” is not heeded: change the target's numbers instead.`),
    ...unknown.filter(({ said }) => said.includes(" ")).map(({ said }) => `“${said}”: say what it should be instead.`),
  ];
}

/**
 * Wishes in plain words, phrase by phrase: "glassy 4, fat bridge that cleans up, hum-free 2". Every word of a phrase is wished for in
 * every place that it names.
 */
export function parseWishes(text: string): Parsed {
  const phrases = text
    .split(/[,;.\n]+/)
    .filter((each) => each.trim() !== "")
    .map(readPhrase);
  const byPlace = new Map<string, { where: Where; words: Set<WordName> }>();
  for (const { words, places } of phrases) {
    if (words.length === 0) continue;
    for (const where of places.length > 0 ? places : [usualPlace(words)]) {
      const key = whereKey(where);
      const known = byPlace.get(key) ?? { where, words: new Set<WordName>() };
      for (const word of words) known.words.add(word);
      byPlace.set(key, known);
    }
  }
  return {
    wishes: Array.from(byPlace.values(), ({ where, words }) => ({
      where,
      asks: Array.from(words, (word) => askFor(word)),
    })),
    unknown: phrases.flatMap(({ unknown }) => unknown),
    notes: phrases.flatMap(notesOf),
  };
}
