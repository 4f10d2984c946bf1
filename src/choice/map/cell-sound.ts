import { powerDecibels } from "../../decibels.ts";
import { type BandEnergies, bandEnergies, leastHeard } from "../band-energies.ts";
import { SLICES, SLICES_PER_BAND } from "../slices.ts";
import { brightnessHz } from "./brightness.ts";

/** What is heard of one cell, by itself: a guard in one setting. */
export interface CellSound {
  /** Of every ERB band, in dB re the sound's own loudness (K-weighting of ITU-R BS.1770), so that any two are level matched. */
  readonly levelsDb: Float64Array;
  /** Whether a band is heard beside this sound's loudest. */
  readonly heard: readonly boolean[];
  /** The levels, those of bands that are not heard raised to where they would be: a point in the space that distances are taken in. */
  readonly point: Float64Array;
  /** LU above an arbitrary zero that all cells share. */
  readonly loudnessLu: number;
  readonly brightnessHz: number;
}

/** Power gain of the K-weighting over each band. */
const BAND_K_GAIN = Float64Array.from(SLICES.bands, (_, band) => {
  const gains = SLICES.kGain.subarray(band * SLICES_PER_BAND, (band + 1) * SLICES_PER_BAND);
  return gains.reduce((sum, gain) => sum + gain, 0) / SLICES_PER_BAND;
});

function pointOf(levelsDb: Float64Array, energies: BandEnergies, loudnessLu: number): Float64Array {
  const least = leastHeard(energies);
  return levelsDb.map((level, band) => Math.max(level, powerDecibels(least / BAND_K_GAIN[band]!) - loudnessLu));
}

/** @param energies of every slice, as `energiesFor` gives them; not silence, which has no level-matched bands */
export function cellSound(energies: Float64Array): CellSound {
  const bands = bandEnergies(energies);
  const loudnessLu = powerDecibels(bands.weightedTotal);
  const levelsDb = bands.plain.map((energy) => powerDecibels(energy) - loudnessLu);
  const least = leastHeard(bands);
  return {
    levelsDb,
    heard: Array.from(bands.weighted, (energy) => energy >= least),
    point: pointOf(levelsDb, bands, loudnessLu),
    loudnessLu,
    brightnessHz: brightnessHz(bands),
  };
}
