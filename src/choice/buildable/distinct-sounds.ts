import type { CellSound } from "../map/cell-sound.ts";
import { equalPairs } from "../map/equal-sounds.ts";
import { equalGroups } from "../map/groups.ts";

/** Sounds in groups of which all pass for one another to the usual listener, those that stand alone among them; by their numbers. */
export function distinctSounds(sounds: readonly CellSound[]): number[][] {
  const groups = equalGroups(sounds.length, equalPairs(sounds, "edge"));
  const grouped = new Set(groups.flat());
  return [...groups, ...sounds.flatMap((_, index) => (grouped.has(index) ? [] : [[index]]))];
}
