import { powerFromDecibels } from "../../decibels.ts";

/**
 * Just-noticeable change of a resonance's frequency, 0.079·Fr/√Q (Gagné and Zurek, Resonance-frequency discrimination, J.
 * Acoust. Soc. Am. 83, 2293, 1988), measured for second-order resonances at 300–2000 Hz with Q 1–36.
 */
export function resonanceJndHz(resonanceHz: number, q: number): number {
  return (JND_FACTOR * resonanceHz) / Math.sqrt(q);
}

const JND_FACTOR = 0.079;
const MEASURED_HZ = { from: 300, to: 2000 };
const MEASURED_Q = { from: 1, to: 36 };

/** Whether the formula is used outside the range it was measured in. */
export function isExtrapolated(resonanceHz: number, q: number): boolean {
  return resonanceHz < MEASURED_HZ.from || resonanceHz > MEASURED_HZ.to || q < MEASURED_Q.from || q > MEASURED_Q.to;
}

/**
 * Q of the second-order low-pass whose peak stands this far above its level at low frequencies:
 * M = Q/√(1 − 1/(4Q²)), hence Q² = M²·(1 + √(1 − 1/M²))/2.
 * @param peakDb dB above the plateau, 0 or more
 */
export function qOfPeak(peakDb: number): number {
  const m2 = powerFromDecibels(Math.max(0, peakDb));
  return Math.sqrt((m2 * (1 + Math.sqrt(1 - 1 / m2))) / 2);
}

type Peak = { readonly frequency: number; readonly level: number } | null;

export interface PeakShift {
  /** Second minus first. */
  readonly shiftHz: number;
  readonly jndHz: number;
  /** The shift in just-noticeable steps, without sign. */
  readonly inJnd: number;
  readonly q: number;
  readonly extrapolated: boolean;
}

/** The shift between two peaks, or null where either curve has none. The blunter of the two decides the Q. */
export function peakShift(first: Peak, second: Peak): PeakShift | null {
  if (!first || !second) return null;
  const q = qOfPeak(Math.min(first.level, second.level));
  const between = Math.sqrt(first.frequency * second.frequency);
  const jndHz = resonanceJndHz(between, q);
  const shiftHz = second.frequency - first.frequency;
  const extrapolated = isExtrapolated(first.frequency, q) || isExtrapolated(second.frequency, q);
  return { shiftHz, jndHz, inJnd: Math.abs(shiftHz) / jndHz, q, extrapolated };
}
