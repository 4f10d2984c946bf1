import type { Band } from "../erb.ts";
import { SLICES, SLICES_PER_BAND } from "../slices.ts";

/** Below this energy is silence; also what keeps logarithms finite. */
const LEAST_ENERGY = 1e-30;
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

function db(energy: number): number {
  return 10 * Math.log10(Math.max(energy, LEAST_ENERGY));
}

/** Loudness of slice energies in LU above an arbitrary zero that all share. */
export function loudnessLu(energies: Float64Array): number {
  return db(bandEnergies(energies).weightedTotal);
}

/** Which bands of either sound are within the range heard beside its loudest, by K-weighted energy. */
function bandsHeard(a: BandEnergies, b: BandEnergies): boolean[] {
  const least = 10 ** (-HEARD_RANGE_DB / 10);
  const top = (weighted: Float64Array) => weighted.reduce((best, energy) => Math.max(best, energy), 0);
  const [leastA, leastB] = [least * top(a.weighted), least * top(b.weighted)];
  return Array.from(a.weighted, (energy, band) => energy >= leastA || b.weighted[band]! >= leastB);
}

/** Compares slice energies of two sounds after bringing them to the same loudness. */
export function levelMatchedDifference(first: Float64Array, second: Float64Array): BandDifference {
  const [a, b] = [bandEnergies(first), bandEnergies(second)];
  const loudness = db(b.weightedTotal) - db(a.weightedTotal);
  const heard = bandsHeard(a, b);
  const perBandDb = new Float64Array(heard.length);
  let at = -1;
  let squares = 0;
  let count = 0;
  for (let band = 0; band < perBandDb.length; band++) {
    const difference = db(b.plain[band]!) - db(a.plain[band]!) - loudness;
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
    silent: [a.total <= LEAST_ENERGY, b.total <= LEAST_ENERGY],
  };
}
