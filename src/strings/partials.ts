import { type CoilPlace, coilWeight, type Pluck, partialFrequencyHz, pluckWeight, USUAL_PLUCK } from "./comb.ts";
import { decayPerSecond } from "./decay.ts";
import type { SoundingString } from "./string-set.ts";

/** Partials above this are not heard; it bounds the work at high sample rates. */
const HIGHEST_HEARD_HZ = 20_000;
/** A usual low E has 240 partials below 20 kHz; the rest is room for lower tunings. */
const MAX_PARTIALS = 400;

export interface Partial {
  readonly frequencyHz: number;
  /** Signed, relative to the pluck's velocity; for one coil at output 1 never above 1. */
  readonly amplitude: number;
  /** Amplitude decays as e^(−decay·t). */
  readonly decayPerSecond: number;
}

/** How many partials lie at or below the limit. */
export function countPartials(string: SoundingString, belowHz: number): number {
  const limit = Math.min(belowHz, HIGHEST_HEARD_HZ);
  let count = 0;
  while (count < MAX_PARTIALS && partialFrequencyHz(string, count + 1) <= limit) count += 1;
  return count;
}

/** Partials 1, 2, … of one pluck as a coil's EMF has them, up to `belowHz` or 20 kHz. */
export function partialsAtCoil(
  string: SoundingString,
  coil: CoilPlace,
  pluck: Pluck = USUAL_PLUCK,
  belowHz: number = HIGHEST_HEARD_HZ,
): Partial[] {
  return Array.from({ length: countPartials(string, belowHz) }, (_, index) => {
    const n = index + 1;
    const frequencyHz = partialFrequencyHz(string, n);
    return {
      frequencyHz,
      amplitude: pluckWeight(string, pluck, n) * coilWeight(string, coil, n),
      decayPerSecond: decayPerSecond(string.decay, frequencyHz),
    };
  });
}
