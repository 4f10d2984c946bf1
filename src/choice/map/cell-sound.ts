import { powerDecibels } from "../../decibels.ts";
import { bandEnergies } from "../band-energies.ts";
import { heardSound } from "../ear/heard-sound.ts";
import { brightnessHz } from "./brightness.ts";

/** What is heard of one cell, by itself: a guard in one setting. */
export interface CellSound {
  /** Levels of every ERB band as the ear has them, equally loud through the speaker, dB: a point in the space that distances are taken in. */
  readonly point: Float64Array;
  /** LU above an arbitrary zero that all cells share, at the jack. */
  readonly loudnessLu: number;
  readonly brightnessHz: number;
}

/** @param energies of every slice, as `energiesFor` gives them; not silence, which has no level-matched bands */
export function cellSound(energies: Float64Array): CellSound {
  const bands = bandEnergies(energies);
  return {
    point: heardSound(energies).levelsDb,
    loudnessLu: powerDecibels(bands.weightedTotal),
    brightnessHz: brightnessHz(bands),
  };
}
