import { powerDecibels, powerFromDecibels } from "../decibels.ts";
import { SLICES, SLICES_PER_BAND } from "./slices.ts";

/** A band this far under the loudest is taken as unheard beside it: loud playing over a quiet room; a choice, no source. */
export const HEARD_RANGE_DB = 60;

/** Energies of the bands, plain and K-weighted, and both totals. */
export interface BandEnergies {
  readonly plain: Float64Array;
  readonly weighted: Float64Array;
  readonly total: number;
  readonly weightedTotal: number;
}

/** @param energies of every slice */
export function bandEnergies(energies: Float64Array): BandEnergies {
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

/** The least K-weighted energy of a band that is heard beside the loudest of its sound. */
export function leastHeard({ weighted }: BandEnergies): number {
  return powerFromDecibels(-HEARD_RANGE_DB) * weighted.reduce((best, energy) => Math.max(best, energy), 0);
}
