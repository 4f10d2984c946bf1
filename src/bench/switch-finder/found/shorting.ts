import { bitsOf } from "../heard.ts";
import type { Contacts } from "../known/known-specs.ts";
import type { SwitchQuestion } from "../question.ts";

export type Shorting = "yes" | "no" | "not tried";

/** Two lugs to touch while the handle is held between two positions. */
export interface ShortingTest {
  readonly a: number;
  readonly b: number;
  readonly betweenPositions: readonly [number, number];
}

/**
 * Whether two lugs, touched with the handle between two positions, tell shorting from not: one lug is joined to the first before
 * and to the second after, and the two are apart in both. Both at once is make before break.
 */
function tells(contacts: Contacts, lugs: number, a: number, b: number, before: number): boolean {
  const [first, second] = [1 << before, 1 << (before + 1)];
  if (contacts[a * lugs + b]! & (first | second)) return false;
  const goesOver = (from: number, to: number, lug: number) =>
    (contacts[lug * lugs + from]! & first) !== 0 && (contacts[lug * lugs + to]! & second) !== 0;
  return Array.from({ length: lugs }, (_, lug) => lug).some((lug) => goesOver(a, b, lug) || goesOver(b, a, lug));
}

/** Yes where any pair beeped between two positions, no where those that could tell were silent. */
export function shortingOf({ lugs, beeps }: SwitchQuestion, contacts: Contacts): Shorting {
  const indexOf = new Map(lugs.map(({ name }, index) => [name, index]));
  const telling = beeps.filter(({ between, betweenPositions }) => {
    if (!betweenPositions) return false;
    const [a, b] = between.map((name) => indexOf.get(name)!);
    return tells(contacts, lugs.length, a!, b!, Math.min(...betweenPositions) - 1);
  });
  if (telling.length === 0) return "not tried";
  return telling.some(({ beeps: heard }) => heard) ? "yes" : "no";
}

/** The first pair that would tell, its common left alone; none where no lug goes from one to another. */
export function shortingTest(contacts: Contacts, lugs: number, positions: number): ShortingTest | undefined {
  for (const before of bitsOf(2 ** (positions - 1) - 1))
    for (let a = 0; a < lugs; a++)
      for (let b = a + 1; b < lugs; b++)
        if (tells(contacts, lugs, a, b, before)) return { a, b, betweenPositions: [before + 1, before + 2] };
  return undefined;
}
