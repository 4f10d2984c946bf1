import type { Spectrum } from "../network/nodal-analysis.ts";

/** Silence in decibels: JSON has no −∞, and −300 dB is below what double precision resolves beside 0 dB. */
export const SILENCE_DB = -300;
const SILENCE = 10 ** (SILENCE_DB / 20);

export function decibels(amplitude: number): number {
  return amplitude > SILENCE ? 20 * Math.log10(amplitude) : SILENCE_DB;
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
  return re.map((real, i) => decibels(Math.hypot(real, im[i]!)));
}

/**
 * Phase in degrees, unwrapped along the list: no step between neighbours exceeds 180°. Where there is silence the phase
 * of the last sounding frequency is kept.
 */
export function unwrappedPhaseDegrees({ re, im }: Spectrum): Float64Array {
  const phase = new Float64Array(re.length);
  let previous: number | undefined;
  for (let i = 0; i < re.length; i++) {
    if (Math.hypot(re[i]!, im[i]!) <= SILENCE) {
      phase[i] = previous ?? 0;
      continue;
    }
    const raw = (Math.atan2(im[i]!, re[i]!) * 180) / Math.PI;
    const turns = previous === undefined ? 0 : Math.round((previous - raw) / 360);
    previous = raw + 360 * turns;
    phase[i] = previous;
  }
  return phase;
}
