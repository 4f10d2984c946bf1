import { decibels, NEPERS_OF_AMPLITUDE_PER_DB, SILENT_AMPLITUDE } from "../../decibels.ts";

/** A number, and by how much it may be off. */
export interface Uncertain {
  readonly value: number;
  readonly off: number;
}

/** Of a peak's or a cutoff's frequency. */
const DIGITS = 6;
/** Of a level in dB, after the point. */
const LEVEL_PLACES = 4;

/** Rounds to steps of 10^−places where every number within reach of the value rounds alike; else undefined. */
function roundedTo(places: number, { value, off }: Uncertain): number | undefined {
  const [up, down] = places < 0 ? [1, 10 ** -places] : [10 ** places, 1];
  const low = Math.round(((value - off) * up) / down);
  if (low !== Math.round(((value + off) * up) / down)) return undefined;
  // One division of whole numbers comes out as the double nearest to the decimal.
  return (low * down) / up;
}

/**
 * To six digits, so that a value does not depend on the way it was computed; undefined where it is so near the middle between two
 * of them that only a more exact one settles it (A. Ziv, Fast evaluation of elementary mathematical functions with correctly
 * rounded last bit, ACM TOMS 17, 1991).
 */
export function settledFrequency(frequency: Uncertain): number | undefined {
  return roundedTo(DIGITS - 1 - Math.floor(Math.log10(frequency.value)), frequency);
}

/** To a ten-thousandth of a dB. */
export function settledLevel(level: Uncertain): number | undefined {
  return roundedTo(LEVEL_PLACES, level);
}

/** The level of an amplitude of 0 or more, to a ten-thousandth of a dB. */
export function settledDecibels({ value, off }: Uncertain): number | undefined {
  if (Math.abs(value - SILENT_AMPLITUDE) <= off) return undefined;
  const level = decibels(value);
  if (value <= SILENT_AMPLITUDE) return level;
  return settledLevel({ value: level, off: off / (value - off) / NEPERS_OF_AMPLITUDE_PER_DB });
}
