/** Silence in decibels: JSON has no −∞, and −300 dB is below what double precision resolves beside 0 dB. */
export const SILENCE_DB = -300;
/** Under it is silence: nothing hears it, and what rounding leaves where coils cancel is not told from it. */
const SILENT_BELOW_DB = -200;

/** A neper is the natural logarithm's unit of a ratio; these are of a ratio of powers and of amplitudes. */
export const DB_PER_NEPER_OF_POWER = 10 / Math.LN10;
export const NEPERS_OF_AMPLITUDE_PER_DB = Math.LN10 / 20;

export const SILENT_AMPLITUDE = amplitudeFromDecibels(SILENT_BELOW_DB);
export const SILENT_POWER = powerFromDecibels(SILENT_BELOW_DB);

/** Of an amplitude of 0 or more; SILENCE_DB where that is silence. */
export function decibels(amplitude: number): number {
  return amplitude > SILENT_AMPLITUDE ? 20 * Math.log10(amplitude) : SILENCE_DB;
}

/** Of a squared amplitude of 0 or more; SILENCE_DB where that is silence. */
export function powerDecibels(power: number): number {
  return power > SILENT_POWER ? DB_PER_NEPER_OF_POWER * Math.log(power) : SILENCE_DB;
}

export function amplitudeFromDecibels(level: number): number {
  return 10 ** (level / 20);
}

export function powerFromDecibels(level: number): number {
  return 10 ** (level / 10);
}
