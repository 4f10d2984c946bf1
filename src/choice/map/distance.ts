import { type Checkpoint, NO_CHECKPOINT } from "../../checkpoint.ts";

/**
 * How far two sounds lie apart: the root mean square over the ERB bands of what their level-matched band levels differ by, in dB. R. Plomp
 * (Timbre as a multidimensional attribute of complex tones, in Frequency Analysis and Periodicity Detection in Hearing, 1970; from memory)
 * found that listeners' judgements of unlike timbres go with the Euclidean distance of band levels; A. H. Gray and J. D. Markel (IEEE
 * Trans. ASSP 24, 380, 1976; from memory) call the same over frequency the RMS log spectral distance. A norm of a difference: nothing to
 * itself, the same both ways, and no way round is shorter.
 * @param a points of `cellSound`, of one length
 */
export function distanceDb(a: Float64Array, b: Float64Array): number {
  let squares = 0;
  for (let band = 0; band < a.length; band++) {
    const difference = a[band]! - b[band]!;
    squares += difference * difference;
  }
  return Math.sqrt(squares / a.length);
}

/** Distances of all pairs, i < j, row by row: 0–1, 0–2 … 1–2 …; dB. */
export function pairDistances(
  points: readonly Float64Array[],
  { checkpoint }: Checkpoint = NO_CHECKPOINT,
): Float64Array {
  const count = points.length;
  const distances = new Float64Array((count * (count - 1)) / 2);
  let at = 0;
  for (let i = 0; i < count; i++) {
    checkpoint();
    const own = points[i]!;
    for (let j = i + 1; j < count; j++) distances[at++] = distanceDb(own, points[j]!);
  }
  return distances;
}
