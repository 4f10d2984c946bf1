import { DIAL_MAX } from "../../../build-file/settings.ts";

/** Dials looked at before halving: knobs need not rise all the way, and the topmost place is the one to play at. */
const LOOKED_AT = 21;
const HALVINGS = 12;

/**
 * The highest dial at which something rising with the dial has a wanted value; null where no dial has it.
 * @param valueAt null where it has no value
 */
export function matchingDial(valueAt: (dial: number) => number | null, wanted: number): number | null {
  const above = (dial: number) => {
    const value = valueAt(dial);
    return value === null || value >= wanted;
  };
  const dialOf = (index: number) => (index * DIAL_MAX) / (LOOKED_AT - 1);
  if (!above(DIAL_MAX)) return null;
  let low = LOOKED_AT - 2;
  while (low >= 0 && above(dialOf(low))) low--;
  if (low < 0) return null;
  let [below, over] = [dialOf(low), dialOf(low + 1)];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (below + over) / 2;
    if (above(middle)) over = middle;
    else below = middle;
  }
  return over;
}
