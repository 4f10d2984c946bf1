/** Silence in decibels: JSON has no −∞, and −300 dB is below what double precision resolves beside 0 dB. */
export const SILENCE_DB = -300;

/** A neper is the natural logarithm's unit of a ratio; these are of a ratio of powers and of amplitudes. */
export const DB_PER_NEPER_OF_POWER = 10 / Math.LN10;
export const NEPERS_OF_AMPLITUDE_PER_DB = Math.LN10 / 20;

const SILENCE = amplitudeFromDecibels(SILENCE_DB);
export const SILENT_POWER = SILENCE * SILENCE;

/** Of an amplitude of 0 or more; SILENCE_DB at the least. */
export function decibels(amplitude: number): number {
  return amplitude > SILENCE ? 20 * Math.log10(amplitude) : SILENCE_DB;
}

/** Of a squared amplitude of 0 or more; SILENCE_DB at the least. */
export function powerDecibels(power: number): number {
  return power > SILENT_POWER ? DB_PER_NEPER_OF_POWER * Math.log(power) : SILENCE_DB;
}

export function amplitudeFromDecibels(level: number): number {
  return 10 ** (level / 20);
}

export function powerFromDecibels(level: number): number {
  return 10 ** (level / 10);
}
