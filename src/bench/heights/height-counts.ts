import type { Gaps } from "./gaps.ts";
import type { Recorded } from "./recorded.ts";

/** Two gaps are one height if they differ by less: finer than a rule shows. */
const SAME_HEIGHT_METRES = 5e-5;
/** Different heights of each movable pickup among the recordings. */
export function heightCounts({ pickups, observations }: Recorded): number[] {
  return pickups.map((_, index) => {
    const seen: Gaps[] = [];
    for (const { gaps } of observations) {
      const own = gaps[index]!;
      const isKnown = seen.some(
        ({ bassMetres, trebleMetres }) =>
          Math.abs(bassMetres - own.bassMetres) < SAME_HEIGHT_METRES &&
          Math.abs(trebleMetres - own.trebleMetres) < SAME_HEIGHT_METRES,
      );
      if (!isKnown) seen.push(own);
    }
    return seen.length;
  });
}
