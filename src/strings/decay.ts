/** Decay rates are of amplitude: a partial goes as e^(−σt); 6.9/σ is its time to fall 60 dB. All values common practice, no source. */

/** Supports and neck, the same at every frequency: 14 s for 60 dB. */
const SUPPORT_PER_SECOND = 0.5;
/** Friction inside the wire, a constant Q and so in proportion to frequency. */
const WIRE_PER_SECOND_KHZ = 1.2;
/** Air and bending, which grow with the square of frequency. */
const BENDING_PER_SECOND_KHZ2 = 0.25;

/**
 * σ(f) = σ0 + σ1·f + σ2·f² for a ringing string: constant and square terms as in Chaigne & Askenfelt, J. Acoust. Soc. Am. 95,
 * 1112 (1994), with the constant-Q term of Fletcher & Rossing, ch. 2 (form from memory, values chosen by ear).
 */
export function decayPerSecond(frequencyHz: number): number {
  const kilohertz = frequencyHz / 1000;
  return SUPPORT_PER_SECOND + WIRE_PER_SECOND_KHZ * kilohertz + BENDING_PER_SECOND_KHZ2 * kilohertz ** 2;
}

/** What a palm resting at the bridge adds: half a second for 60 dB at the bottom, far less above. */
export function palmPerSecond(frequencyHz: number): number {
  return 9 + 25 * (frequencyHz / 1000);
}

/** A finger laid on the string at the end of a note: silent in 0.2 s. */
export const RELEASE_PER_SECOND = 60;
/** The plectrum touching a string that still rings, just before the next pluck. */
export const CHOKE_PER_SECOND = 600;
export const CHOKE_BEFORE_SECONDS = 0.012;
