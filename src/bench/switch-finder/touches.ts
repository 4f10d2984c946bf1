import type { Touch } from "./heard.ts";
import type { BeepTold, SwitchQuestion } from "./question.ts";

/** What was told with the handle in its positions, as bits; each with its place in the question. */
export interface ToldTouch extends Touch {
  readonly index: number;
}

function masksOf({ positions, position, beeps }: BeepTold, all: number): { on: number; off: number } | undefined {
  if (positions) {
    const on = positions.reduce((mask, each) => mask | (1 << (each - 1)), 0);
    return { on, off: all & ~on };
  }
  if (position === undefined) return undefined;
  const bit = 1 << (position - 1);
  return beeps ? { on: bit, off: 0 } : { on: 0, off: bit };
}

export function touchesOf({ lugs, positions, beeps }: SwitchQuestion): ToldTouch[] {
  const indexOf = new Map(lugs.map(({ name }, index) => [name, index]));
  const all = 2 ** positions - 1;
  return beeps.flatMap((told, index): ToldTouch[] => {
    const masks = masksOf(told, all);
    const [a, b] = told.between.map((name) => indexOf.get(name)!);
    return masks ? [{ a: a!, b: b!, ...masks, index }] : [];
  });
}
