import { audibility } from "../compare/verdict.ts";
import type { CellSound } from "../map/cell-sound.ts";

interface Pair {
  readonly first: number;
  readonly second: number;
  readonly largestDb: number;
}

/** The largest level-matched difference in any band that is heard in either, as `levelMatchedDifference` finds it, dB. */
function largestDb(a: CellSound, b: CellSound): number {
  let largest = 0;
  for (let band = 0; band < a.heard.length; band++)
    if (a.heard[band] || b.heard[band]) largest = Math.max(largest, Math.abs(a.levelsDb[band]! - b.levelsDb[band]!));
  return largest;
}

const passForOne = (db: number) => audibility(db) === "none" || audibility(db) === "edge";

/**
 * Sounds in groups of which all pass for one another to the usual listener, the most alike joined first (complete linkage), so that a
 * chain of small steps that ends where it is heard is more than one sound.
 */
export function distinctSounds(sounds: readonly CellSound[]): number[][] {
  const pairs = sounds
    .flatMap((a, first) =>
      sounds.slice(first + 1).map((b, i): Pair => ({ first, second: first + 1 + i, largestDb: largestDb(a, b) })),
    )
    .filter((pair) => passForOne(pair.largestDb))
    .sort((a, b) => a.largestDb - b.largestDb || a.first - b.first || a.second - b.second);
  const alike = new Set(pairs.map(({ first, second }) => first * sounds.length + second));
  const isAlike = (a: number, b: number) => alike.has(Math.min(a, b) * sounds.length + Math.max(a, b));
  const groupOf = sounds.map((_, index) => [index]);
  for (const { first, second } of pairs) {
    const [one, other] = [groupOf[first]!, groupOf[second]!];
    if (one === other || !one.every((a) => other.every((b) => isAlike(a, b)))) continue;
    one.push(...other);
    for (const index of other) groupOf[index] = one;
  }
  return [...new Set(groupOf)];
}
