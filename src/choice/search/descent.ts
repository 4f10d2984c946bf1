import { createUniform } from "../uniform.ts";
import type { Combination, Trials } from "./trials.ts";

/** Descents from different starting points where not everything can be tried. */
export const DESCENTS = 40;
const DESCENT_SEED = 1;

/** Every combination. @param sizes how many values each part has */
export function tryAll(trials: Trials, sizes: readonly number[]): void {
  const combination = sizes.map(() => 0);
  for (;;) {
    trials.costOf([...combination]);
    let at = sizes.length - 1;
    while (at >= 0 && combination[at] === sizes[at]! - 1) combination[at--] = 0;
    if (at < 0) return;
    combination[at]!++;
  }
}

/** Every pair of axes, each axis alone where there is only one. */
function axisPairs(count: number): [number, number][] {
  const axes = Array.from({ length: count }, (_, index) => index);
  if (count === 1) return [[0, 0]];
  return axes.flatMap((first) => axes.slice(first + 1).map((second): [number, number] => [first, second]));
}

/**
 * Goes to the best combination of two axes, then of two others, until none gains. Two at a time, since parts make up for each
 * other: a larger cap on a larger pot, a longer cable behind a larger volume.
 */
function descend(trials: Trials, sizes: readonly number[], start: Combination): void {
  let best = start;
  let cost = trials.costOf(start);
  for (let gained = true; gained; ) {
    gained = false;
    for (const [first, second] of axisPairs(sizes.length)) {
      for (let at = 0; at < sizes[first]! * (first === second ? 1 : sizes[second]!); at++) {
        if (trials.areSpent) return;
        const next = [...best];
        next[first] = at % sizes[first]!;
        if (first !== second) next[second] = Math.floor(at / sizes[first]!);
        const nextCost = trials.costOf(next);
        if (!(nextCost < cost)) continue;
        best = next;
        cost = nextCost;
        gained = true;
      }
    }
  }
}

/** Descents from places spread evenly over all combinations. @param sizes how many values each part has */
export function trySome(trials: Trials, sizes: readonly number[]): void {
  const uniform = createUniform(DESCENT_SEED);
  for (let descent = 0; descent < DESCENTS && !trials.areSpent; descent++)
    descend(
      trials,
      sizes,
      sizes.map((size) => Math.floor(size * uniform())),
    );
}
