import { DEFAULT_STRING_AGE, STRING_AGES, type StringAge } from "../strings/decay.ts";
import { DEFAULT_HAND, HAND_NAMES, HANDS, type HandName } from "../strings/hands.ts";

export type { HandName, StringAge };
export { DEFAULT_HAND, DEFAULT_STRING_AGE, HAND_NAMES, STRING_AGES };

/** How a phrase is played, where it is not as usual. */
export interface Playing {
  readonly hand?: HandName | undefined;
  readonly strings?: StringAge | undefined;
}

/** A way to play as a caller may choose it. */
export interface WayEntry<Name extends string = string> {
  readonly name: Name;
  readonly title: string;
  readonly description: string;
}

/** The usual one first. */
export const HAND_ENTRIES: readonly WayEntry<HandName>[] = HAND_NAMES.map((name) => {
  const { title, description } = HANDS[name];
  return { name, title, description };
});

/** From bright to dark. */
export const STRING_ENTRIES: readonly WayEntry<StringAge>[] = [
  { name: "new", title: "New", description: "wound strings ring on in the treble" },
  { name: "used", title: "Used", description: "as the strings that the decay was measured on, whose age is not told" },
  { name: "old", title: "Old", description: "wound strings gone dull, plain ones a little" },
];
