import { MARK_SECONDS } from "./layout.ts";

/** Wide enough to stand out of hum and hiss, and within what any coil, lead or input lets through. */
const FROM_HZ = 500;
const TO_HZ = 6000;

/** A linear chirp under a Hann window, at `seconds` from its start; 0 outside. Its autocorrelation is one narrow peak. */
export function markAt(seconds: number): number {
  if (seconds <= 0 || seconds >= MARK_SECONDS) return 0;
  const phase = 2 * Math.PI * (FROM_HZ + ((TO_HZ - FROM_HZ) * seconds) / (2 * MARK_SECONDS)) * seconds;
  return Math.sin((Math.PI * seconds) / MARK_SECONDS) ** 2 * Math.sin(phase);
}
