import { powerDecibels, powerFromDecibels, SILENT_POWER } from "../../decibels.ts";
import type { Band } from "../erb.ts";
import { SLICES, SLICES_PER_BAND } from "../slices.ts";

/** A band this far under the loudest is taken as unheard beside it: loud playing over a quiet room; a choice, no source. */
const HEARD_RANGE_DB = 60;

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

/** Energies of the bands, plain and K-weighted, and both totals. */
interface BandEnergies {
  readonly plain: Float64Array;
  readonly weighted: Float64Array;
  readonly total: number;
  readonly weightedTotal: number;
}

function bandEnergies(energies: Float64Array): BandEnergies {
  const count = SLICES.bands.length;
  const { kGain } = SLICES;
  const plain = new Float64Array(count);
  const weighted = new Float64Array(count);
  let total = 0;
  let weightedTotal = 0;
  for (let band = 0, k = 0; band < count; band++) {
    let sum = 0;
    let weightedSum = 0;
    for (const end = k + SLICES_PER_BAND; k < end; k++) {
      const energy = energies[k]!;
      sum += energy;
      weightedSum += energy * kGain[k]!;
    }
    plain[band] = sum;
    weighted[band] = weightedSum;
    total += sum;
    weightedTotal += weightedSum;
  }
  return { plain, weighted, total, weightedTotal };
}

/** Loudness of slice energies in LU above an arbitrary zero that all share. */
export function loudnessLu(energies: Float64Array): number {
  return powerDecibels(bandEnergies(energies).weightedTotal);
}

/** Which bands of either sound are within the range heard beside its loudest, by K-weighted energy. */
function bandsHeard(a: BandEnergies, b: BandEnergies): boolean[] {
  const least = powerFromDecibels(-HEARD_RANGE_DB);
  const top = (weighted: Float64Array) => weighted.reduce((best, energy) => Math.max(best, energy), 0);
  const [leastA, leastB] = [least * top(a.weighted), least * top(b.weighted)];
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
