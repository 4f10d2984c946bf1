import type { Spectrum } from "../network/nodal-analysis.ts";

/** Silence in decibels: JSON has no −∞, and −300 dB is below what double precision resolves beside 0 dB. */
export const SILENCE_DB = -300;
const SILENCE = 10 ** (SILENCE_DB / 20);

export function decibels(amplitude: number): number {
  return amplitude > SILENCE ? 20 * Math.log10(amplitude) : SILENCE_DB;
}

const DB_PER_NEPER_OF_POWER = 10 / Math.LN10;
const SILENT_POWER = SILENCE * SILENCE;

const DEGREES_PER_RADIAN = 180 / Math.PI;

/** Decibels of a squared amplitude. */
export function powerDecibels(power: number): number {
  return power > SILENT_POWER ? DB_PER_NEPER_OF_POWER * Math.log(power) : SILENCE_DB;
}

/** The weighted sum of spectra of equal length. */
export function weightedSum(spectra: readonly Spectrum[], weights: readonly number[]): Spectrum {
  const length = spectra[0]?.re.length ?? 0;
  const re = new Float64Array(length);
  const im = new Float64Array(length);
  for (const [index, spectrum] of spectra.entries()) {
    const weight = weights[index]!;
    for (let i = 0; i < length; i++) {
      re[i]! += weight * spectrum.re[i]!;
      im[i]! += weight * spectrum.im[i]!;
    }
  }
  return { re, im };
}

/** Magnitude in dB; silence is SILENCE_DB. */
export function magnitudeDb({ re, im }: Spectrum): Float64Array {
  const level = new Float64Array(re.length);
  for (let i = 0; i < level.length; i++) level[i] = powerDecibels(re[i]! * re[i]! + im[i]! * im[i]!);
  return level;
}

/**
 * Phase in degrees, unwrapped along the list: no step between neighbours exceeds 180°. Where there is silence the phase
 * of the last sounding frequency is kept.
 */
export function unwrappedPhaseDegrees({ re, im }: Spectrum): Float64Array {
  const phase = new Float64Array(re.length);
  let previous: number | undefined;
  for (let i = 0; i < re.length; i++) {
    if (re[i]! * re[i]! + im[i]! * im[i]! <= SILENT_POWER) {
      phase[i] = previous ?? 0;
      continue;
    }
    const raw = Math.atan2(im[i]!, re[i]!) * DEGREES_PER_RADIAN;
    const turns = previous === undefined ? 0 : Math.round((previous - raw) / 360);
    previous = raw + 360 * turns;
    phase[i] = previous;
  }
  return phase;
}
