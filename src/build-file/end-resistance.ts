import { potBody } from "./bodies/bodies-of.ts";
import { USUAL_END_OHMS } from "./part-schemas.ts";
import type { Pot } from "./schema.ts";

/**
 * What data sheets let a wiper leave at either end of its track: 1 % of it (a push-pull pot of 17 mm), 20 to 50 Ω (carbon pots
 * of 9 to 16 mm), 2 Ω (a latching one, and one of conductive polymer); those of 24 mm say nothing. Six pots of 100 kΩ read 1.04
 * to 1.23 Ω (measurements published beside B. Holmes and M. van Walstijn, Potentiometer law modelling and identification,
 * DAFx-19, 2019).
 */
export const POT_END_FRACTION = 0.01;
const SMALL_END_OHMS = 50;
const LEAST_END_OHMS = 0.5;

/** Between what ohms the end of a track lies where nobody measured it. */
export interface EndRange {
  readonly low: number;
  readonly high: number;
}

type Track = Pick<Pot, "resistance" | "measured" | "endResistance">;

/** A pot's ends from the best to what its sheets just allow; undefined where the build says another than the usual value. */
export function endRangeOf(pot: Pot, { resistance, measured, endResistance }: Track): EndRange | undefined {
  if (endResistance !== USUAL_END_OHMS) return undefined;
  const percent = POT_END_FRACTION * (measured ?? resistance);
  const isSmall = pot.drives === undefined && ["mini", "stacked-mini"].includes(potBody(pot));
  const high = isSmall ? Math.min(percent, SMALL_END_OHMS) : percent;
  return { low: Math.min(LEAST_END_OHMS, high), high };
}
