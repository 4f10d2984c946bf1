import type { Pot } from "./schema.ts";

type Track = Pick<Pot, "taper" | "midpoint">;

/** The usual audio track keeps about 15 % of its resistance below half rotation (common practice, no source). */
const AUDIO_MIDPOINT = 0.15;
const DEFAULT_MIDPOINTS = { linear: 0.5, audio: AUDIO_MIDPOINT, "reverse-audio": 1 - AUDIO_MIDPOINT } as const;

function interpolate(table: readonly (readonly [number, number])[], rotation: number): number {
  const upper = table.findIndex(([point]) => point >= rotation);
  const [x1, y1] = table[upper]!;
  if (upper === 0 || x1 === rotation) return y1;
  const [x0, y0] = table[upper - 1]!;
  return y0 + ((y1 - y0) * (rotation - x0)) / (x1 - x0);
}

/**
 * The fraction of the track's resistance between lug 1 and the wiper.
 * @param dial 0 to 10; 0 puts the wiper at lug 1 and 10 at lug 3.
 */
export function wiperFraction(track: Track, dial: number): number {
  const rotation = dial / 10;
  if (typeof track.taper !== "string") return interpolate(track.taper, rotation);
  const midpoint = track.midpoint ?? DEFAULT_MIDPOINTS[track.taper];
  return rotation <= 0.5 ? 2 * rotation * midpoint : midpoint + (2 * rotation - 1) * (1 - midpoint);
}
