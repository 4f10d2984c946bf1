import { powerDecibels, SILENT_POWER } from "../../decibels.ts";
import { type BandEnergies, bandEnergies, leastHeard } from "../band-energies.ts";
import type { Band } from "../erb.ts";
import { SLICES } from "../slices.ts";

export interface BandDifference {
  /** Second minus first, in LU by the K-weighting of ITU-R BS.1770 (ungated). */
  readonly loudnessLu: number;
  /** Second minus first in every ERB band once loudness is matched, in dB. */
  readonly perBandDb: Float64Array;
  /** Whether a band is loud enough, in either, to be heard beside the loudest. */
  readonly heard: readonly boolean[];
  /** The largest difference among the bands heard. */
  readonly largest: { readonly db: number; readonly band: Band };
  /** Root mean square over the bands heard, in dB. */
  readonly rmsDb: number;
  /** The first, the second or both give no sound at all; then the other figures mean nothing. */
  readonly silent: readonly [boolean, boolean];
}

/** Which bands of either sound are within the range heard beside its loudest, by K-weighted energy. */
function bandsHeard(a: BandEnergies, b: BandEnergies): boolean[] {
  const [leastA, leastB] = [leastHeard(a), leastHeard(b)];
  return Array.from(a.weighted, (energy, band) => energy >= leastA || b.weighted[band]! >= leastB);
}

/** Compares slice energies of two sounds after bringing them to the same loudness. */
export function levelMatchedDifference(first: Float64Array, second: Float64Array): BandDifference {
  const [a, b] = [bandEnergies(first), bandEnergies(second)];
  const loudness = powerDecibels(b.weightedTotal) - powerDecibels(a.weightedTotal);
  const heard = bandsHeard(a, b);
  const perBandDb = new Float64Array(heard.length);
  let at = -1;
  let squares = 0;
  let count = 0;
  for (let band = 0; band < perBandDb.length; band++) {
    const difference = powerDecibels(b.plain[band]!) - powerDecibels(a.plain[band]!) - loudness;
    perBandDb[band] = difference;
    if (!heard[band]) continue;
    if (at < 0 || Math.abs(difference) > Math.abs(perBandDb[at]!)) at = band;
    squares += difference * difference;
    count++;
  }
  return {
    loudnessLu: loudness,
    perBandDb,
    heard,
    largest: { db: perBandDb[at]!, band: SLICES.bands[at]! },
    rmsDb: Math.sqrt(squares / count),
    silent: [a.total <= SILENT_POWER, b.total <= SILENT_POWER],
  };
}
