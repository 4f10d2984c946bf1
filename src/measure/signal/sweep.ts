const FROM_HZ = 15;
/** Below half of 44.1 kHz, the lowest rate there is. */
const TO_HZ = 20_500;
const FADE_IN_SECONDS = 0.15;
const FADE_OUT_SECONDS = 0.008;

const OCTAVES = Math.log(TO_HZ / FROM_HZ);

const halfCosine = (part: number) => (part >= 1 ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * Math.max(0, part)));

/**
 * Exponential sine sweep of peak 1 (A. Farina, Simultaneous Measurement of Impulse Response and Distortion, AES 108, 2000),
 * at `seconds` from its start; 0 outside.
 * @param length seconds
 */
export function sweepAt(seconds: number, length: number): number {
  if (seconds <= 0 || seconds >= length) return 0;
  const phase = ((2 * Math.PI * FROM_HZ * length) / OCTAVES) * Math.expm1((OCTAVES * seconds) / length);
  return halfCosine(seconds / FADE_IN_SECONDS) * halfCosine((length - seconds) / FADE_OUT_SECONDS) * Math.sin(phase);
}

/** The squared magnitude of a sweep's spectrum at `hz`, s²: it dwells on each octave alike. */
export function sweepPower(hz: number, length: number): number {
  return length / (4 * OCTAVES * hz);
}
