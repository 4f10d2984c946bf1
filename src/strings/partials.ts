import { partialFrequencyHz } from "./comb.ts";
import type { SoundingString } from "./string-set.ts";

/** Partials above this are not heard; it bounds the work at high sample rates. */
const HIGHEST_HEARD_HZ = 20_000;
/** A usual low E has 240 partials below 20 kHz; the rest is room for lower tunings. */
const MAX_PARTIALS = 400;

/** How many partials lie at or below the limit. */
export function countPartials(string: SoundingString, belowHz: number): number {
  const limit = Math.min(belowHz, HIGHEST_HEARD_HZ);
  let count = 0;
  while (count < MAX_PARTIALS && partialFrequencyHz(string, count + 1) <= limit) count += 1;
  return count;
}
