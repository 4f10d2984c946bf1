import type { LugWords } from "../words/lug-words.ts";

/** A lug in the words of a step. */
export interface SaidLug {
  /** "old tone cap". */
  readonly part: string;
  /** "one leg"; empty where the part is a single lug. */
  readonly own: string;
  /** "as found: lug of the neck pickup", where the guard that lies on the bench calls it otherwise. */
  readonly otherwise?: string;
}

/** A lug's words taken apart: those of its part, and its own within it. */
export function saidLug(words: LugWords, lug: string): SaidLug {
  const part = words.parts.get(lug.split(".")[0]!)!;
  // What follows a part's words directly is the switch on its shaft: "tone's push-pull".
  const [holder = "", ...own] = words.of(lug).slice(part.length).split(", ");
  return { part: part + holder, own: own.join(", ") };
}

/** What tells a lug by one guard's words to somebody who has the other before him; undefined where both call it alike. */
export function otherwiseCalled(lug: SaidLug, other: SaidLug): string | undefined {
  if (lug.part !== other.part) return [other.part, other.own].filter(Boolean).join(", ");
  return lug.own === other.own ? undefined : other.own;
}

/** "the lever, lug of the bridge pickup (as found: lug of the neck pickup)". */
export function placeText({ part, own, otherwise }: SaidLug): string {
  return `the ${part}${own ? `, ${own}` : ""}${otherwise ? ` (${otherwise})` : ""}`;
}

/** What grows out of a lug: "the other leg of the tone cap", "the start lead of the slug coil (north) of the bridge humbucker". */
export function grownText({ part, own }: SaidLug, means: string): string {
  if (means === "leg") return own === "one leg" ? `one leg of the ${part}` : `the ${own || means} of the ${part}`;
  const [first = "", end] = own.split(", ");
  if (end !== undefined) return `the ${end} ${means} of the ${first} of the ${part}`;
  return first.endsWith(means) ? `the ${first} of the ${part}` : `the ${first} ${means} of the ${part}`;
}
