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
/** Under it a bump is no peak that could be heard to move. */
const LEAST_Q = 1;

/**
 * What is known of hearing resonances, as fractions. Frequency: trained listeners with sharp formants (Kewley-Port and Watson, J. Acoust.
 * Soc. Am. 95, 485, 1994; from memory). Bandwidth: 20 to 40 % (S. S. Stevens, J. Acoust. Soc. Am. 24, 450, 1952; from memory, as J. L.
 * Flanagan, Speech Analysis, Synthesis and Perception, gives it). Decay: a string's time constant to 75 or 140 % passes (H. Järveläinen
 * and T. Tolonen, J. Audio Eng. Soc. 49, 1049, 2001; from memory).
 */
export const RESONANCE_THRESHOLDS = {
  frequency: { trained: 0.015, source: "Kewley-Port and Watson 1994, trained listeners, high Q; from memory" },
  bandwidth: { best: 0.2, usual: 0.4, source: "Stevens 1952; from memory" },
  decay: { shorter: 0.25, longer: 0.4, source: "Järveläinen and Tolonen 2001, plucked strings; from memory" },
} as const;

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
  /** Width at half power, Fr/Q, of the second over the first less one: −0.4 is two fifths narrower. */
  readonly bandwidth: number;
  /** Time in which the resonance dies away, Q/(π·Fr), of the second over the first less one. */
  readonly decay: number;
}

/**
 * The shift between two peaks, or null where either curve has none, or but a bump of Q under 1. The blunter of the two decides the Q;
 * no step is finer than what trained listeners hear.
 */
export function peakShift(first: Peak, second: Peak): PeakShift | null {
  if (!first || !second) return null;
  const [firstQ, secondQ] = [qOfPeak(first.level), qOfPeak(second.level)];
  const q = Math.min(firstQ, secondQ);
  if (q < LEAST_Q) return null;
  const between = Math.sqrt(first.frequency * second.frequency);
  const jndHz = Math.max(resonanceJndHz(between, q), RESONANCE_THRESHOLDS.frequency.trained * between);
  const shiftHz = second.frequency - first.frequency;
  const extrapolated = isExtrapolated(first.frequency, q) || isExtrapolated(second.frequency, q);
  const wider = second.frequency / secondQ / (first.frequency / firstQ);
  return {
    shiftHz,
    jndHz,
    inJnd: Math.abs(shiftHz) / jndHz,
    q,
    extrapolated,
    bandwidth: wider - 1,
    decay: 1 / wider - 1,
  };
}
