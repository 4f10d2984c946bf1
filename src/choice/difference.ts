import type { Band } from "./erb.ts";
import { SLICES, SLICES_PER_BAND } from "./slices.ts";

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

function bandSums(energies: Float64Array, weights?: Float64Array): Float64Array {
  return Float64Array.from(SLICES.bands, (_, band) => {
    let sum = 0;
    for (let k = band * SLICES_PER_BAND; k < (band + 1) * SLICES_PER_BAND; k++)
      sum += energies[k]! * (weights ? weights[k]! : 1);
    return sum;
  });
}

function total(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function db(energy: number): number {
  return 10 * Math.log10(Math.max(energy, LEAST_ENERGY));
}

/** Loudness of slice energies in LU above an arbitrary zero that all share. */
export function loudnessLu(energies: Float64Array): number {
  return db(total(energies.map((energy, k) => energy * SLICES.kGain[k]!)));
}

/** K-weighted level of every band in dB below the loudest band. */
function reLoudest(energies: Float64Array): Float64Array {
  const levels = bandSums(energies, SLICES.kGain).map(db);
  const top = levels.reduce((best, level) => Math.max(best, level), -Infinity);
  return levels.map((level) => level - top);
}

/** Compares slice energies of two sounds after bringing them to the same loudness. */
export function levelMatchedDifference(first: Float64Array, second: Float64Array): BandDifference {
  const loudness = loudnessLu(second) - loudnessLu(first);
  const [a, b] = [bandSums(first), bandSums(second)];
  const perBandDb = a.map((energy, band) => db(b[band]!) - db(energy) - loudness);
  const [levelA, levelB] = [reLoudest(first), reLoudest(second)];
  const heard = Array.from(levelA, (level, band) => Math.max(level, levelB[band]!) > -HEARD_RANGE_DB);
  let at = heard.indexOf(true);
  let squares = 0;
  let count = 0;
  for (const [band, difference] of perBandDb.entries()) {
    if (!heard[band]) continue;
    if (Math.abs(difference) > Math.abs(perBandDb[at]!)) at = band;
    squares += difference * difference;
    count++;
  }
  return {
    loudnessLu: loudness,
    perBandDb,
    heard,
    largest: { db: perBandDb[at]!, band: SLICES.bands[at]! },
    rmsDb: Math.sqrt(squares / count),
    silent: [total(first) <= LEAST_ENERGY, total(second) <= LEAST_ENERGY],
  };
}
