import { type Checkpoint, NO_CHECKPOINT } from "../../checkpoint.ts";
import { PASSES_FOR_ONE_DB, type PassesForOne } from "../compare/verdict.ts";
import type { CellSound } from "./cell-sound.ts";

/** Two cells, by their numbers, that pass for one. */
export interface EqualPair {
  readonly first: number;
  readonly second: number;
  /** Their largest difference in any band, as it is heard. */
  readonly largestDb: number;
}

/**
 * The largest difference of two sounds in any band, as `heardDifference` finds it, dB; infinite as soon as one is not under the limit,
 * since most pairs are told apart in the first bands.
 */
export function largestUnder(limitDb: number, a: CellSound, b: CellSound): number {
  let largest = 0;
  for (let band = 0; band < a.point.length; band++) {
    const difference = Math.abs(a.point[band]! - b.point[band]!);
    if (!(difference < limitDb)) return Number.POSITIVE_INFINITY;
    if (difference > largest) largest = difference;
  }
  return largest;
}

/** The same, whatever it comes to. */
export const largestApart = (a: CellSound, b: CellSound) => largestUnder(Number.POSITIVE_INFINITY, a, b);

/** All pairs that pass for one, the most alike first. */
export function equalPairs(
  sounds: readonly CellSound[],
  passes: PassesForOne,
  { checkpoint }: Checkpoint = NO_CHECKPOINT,
): EqualPair[] {
  const limitDb = PASSES_FOR_ONE_DB[passes];
  const pairs: EqualPair[] = [];
  for (let first = 0; first < sounds.length; first++) {
    checkpoint();
    for (let second = first + 1; second < sounds.length; second++) {
      const largestDb = largestUnder(limitDb, sounds[first]!, sounds[second]!);
      if (largestDb < limitDb) pairs.push({ first, second, largestDb });
    }
  }
  return pairs.sort((a, b) => a.largestDb - b.largestDb || a.first - b.first || a.second - b.second);
}

/** For every cell, those that pass for it, rising; itself not among them. */
export function equalsOf(count: number, pairs: readonly EqualPair[]): number[][] {
  const equals: number[][] = Array.from({ length: count }, () => []);
  for (const { first, second } of pairs) {
    equals[first]!.push(second);
    equals[second]!.push(first);
  }
  return equals.map((each) => each.sort((a, b) => a - b));
}
