import type { Pot } from "./schema.ts";
import { usualTurn } from "./tapers/angles.ts";
import { usualShare } from "./tapers/usual-track.ts";

type Taper = Pick<Pot, "taper" | "midpoint" | "angles">;
type Track = Pick<Pot, "resistance" | "measured" | "endResistance">;

/** The usual audio track keeps about 15 % of its resistance below half rotation (common practice, no source). */
export const AUDIO_MIDPOINT = 0.15;
const DEFAULT_MIDPOINTS = { linear: 0.5, audio: AUDIO_MIDPOINT, "reverse-audio": 1 - AUDIO_MIDPOINT } as const;

function interpolate(table: readonly (readonly [number, number])[], rotation: number): number {
  const upper = table.findIndex(([point]) => point >= rotation);
  const [x1, y1] = table[upper]!;
  if (upper === 0 || x1 === rotation) return y1;
  const [x0, y0] = table[upper - 1]!;
  return y0 + ((y1 - y0) * (rotation - x0)) / (x1 - x0);
}

/**
 * The fraction of the track's resistance between lug 1 and the wiper, what is left at its ends apart.
 * @param dial 0 to 10; 0 puts the wiper at lug 1 and 10 at lug 3.
 */
export function wiperFraction({ taper, midpoint, angles }: Taper, dial: number): number {
  const rotation = dial / 10;
  if (typeof taper !== "string") return interpolate(taper, rotation);
  return usualShare(midpoint ?? DEFAULT_MIDPOINTS[taper], angles ? usualTurn(angles, rotation) : rotation);
}

/** The share of its track that a wiper leaves at either end, ohms over ohms; never more than half. */
export function endShare({ resistance, measured, endResistance }: Track): number {
  return Math.min(0.5, endResistance / (measured ?? resistance));
}

/** As `wiperFraction`, with what is left at the ends. */
export function wiperShare(pot: Taper & Track, dial: number): number {
  const end = endShare(pot);
  return Math.min(1 - end, Math.max(end, wiperFraction(pot, dial)));
}
