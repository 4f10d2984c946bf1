/**
 * Bandwidth of the auditory filter for normal hearing, ERB_N = 24.673·(0.004368·f + 1) Hz with f in Hz (ANSI/ASA S3.4-2007;
 * Glasberg and Moore 1990 in rounder numbers).
 */
export function erbHz(frequencyHz: number): number {
  return ERB_AT_ZERO_HZ * (ERB_SLOPE * frequencyHz + 1);
}

const ERB_AT_ZERO_HZ = 24.673;
const ERB_SLOPE = 0.004368;

/** ERB number in Cams: how many ERB_N lie below a frequency, ∫ df/ERB_N = 21.366·log10(0.004368·f + 1). */
export function camOf(frequencyHz: number): number {
  return Math.log1p(ERB_SLOPE * frequencyHz) / (ERB_AT_ZERO_HZ * ERB_SLOPE);
}

/** The inverse of `camOf`, in Hz. */
export function frequencyOfCam(cams: number): number {
  return Math.expm1(cams * ERB_AT_ZERO_HZ * ERB_SLOPE) / ERB_SLOPE;
}

export interface Band {
  readonly low: number;
  readonly high: number;
  readonly centre: number;
}

export const LOWEST_BAND_HZ = 50;
export const HIGHEST_BAND_HZ = 16_000;

/** Bands side by side from 50 Hz up, each as wide as ERB_N at its own centre; the last is cut at 16 kHz. */
export function erbBands(): Band[] {
  const bands: Band[] = [];
  let low = LOWEST_BAND_HZ;
  const half = (ERB_AT_ZERO_HZ * ERB_SLOPE) / 2;
  while (low < HIGHEST_BAND_HZ) {
    // high − low = ERB_N((low + high)/2), solved for high.
    const high = Math.min(HIGHEST_BAND_HZ, (low * (1 + half) + ERB_AT_ZERO_HZ) / (1 - half));
    bands.push({ low, high, centre: (low + high) / 2 });
    low = high;
  }
  return bands;
}
