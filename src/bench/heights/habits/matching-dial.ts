import { DIAL_MAX } from "../../../build-file/settings.ts";

/** Dials looked at before halving: knobs need not rise all the way, and the topmost place is the one to play at. */
const LOOKED_AT = 21;
const HALVINGS = 12;

/**
 * The highest dial at which something rising with the dial has a wanted value; null where no dial has it, be it that it leaps over.
 * @param valueAt null where it has no value
 * @param within how far off it may be
 */
export function matchingDial(valueAt: (dial: number) => number | null, wanted: number, within: number): number | null {
  const above = (dial: number) => {
    const value = valueAt(dial);
    return value === null || value >= wanted;
  };
  const isThere = (dial: number) => {
    const value = valueAt(dial);
    return value !== null && Math.abs(value - wanted) <= within;
  };
  const looked = Array.from({ length: LOOKED_AT }, (_, index) => (index * DIAL_MAX) / (LOOKED_AT - 1));
  if (!above(DIAL_MAX)) return isThere(DIAL_MAX) ? DIAL_MAX : null;
  const under = looked.findLastIndex((dial) => !above(dial));
  // Where it is nowhere less, its lowest place may still touch it.
  if (under < 0) return looked.findLast(isThere) ?? null;
  let [below, over] = [looked[under]!, looked[under + 1]!];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (below + over) / 2;
    if (above(middle)) over = middle;
    else below = middle;
  }
  return isThere(over) ? over : null;
}
