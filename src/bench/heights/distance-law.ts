import { decibels } from "../../decibels.ts";

/** How a pickup's level falls as its gap grows: −20·n·log10(gap + offset). Both are fitted; neither is known beforehand. */
export interface DistanceLaw {
  readonly exponent: number;
  readonly offsetMetres: number;
}

/** Of what no screw moves. */
export const UNMOVED: DistanceLaw = { exponent: 0, offsetMetres: 0 };

/** Level in dB above that at one metre; only differences mean anything. */
export function lawDb({ exponent, offsetMetres }: DistanceLaw, gapMetres: number): number {
  return -exponent * decibels(gapMetres + offsetMetres);
}

/** How much a millimetre lower takes, in dB, at a gap. */
export function dbPerMillimetre({ exponent, offsetMetres }: DistanceLaw, gapMetres: number): number {
  return (0.02 / Math.LN10) * (exponent / (gapMetres + offsetMetres));
}
