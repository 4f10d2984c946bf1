/** The plectrum leaves a string within it: noise of some milliseconds; from memory, no source. */
const SCRAPE_SECONDS = 0.008;
/** Edges of the band that the noise is strong in; from memory, no source. */
const BAND_FROM_HZ = 1000;
const BAND_TO_HZ = 8000;

/**
 * The force of a plectrum running off a string: noise in a half sine's shape, of energy 1. White here; the band is in `scrapeWeight`.
 * Repeatable (Marsaglia, Xorshift RNGs, J. Stat. Software 8(14), 2003). @param seed tells one pluck from the next
 */
export function scrapeForce(seed: number, sampleRateHz: number): Float64Array {
  const force = new Float64Array(Math.max(1, Math.round(SCRAPE_SECONDS * sampleRateHz)));
  let state = Math.imul(seed | 0, 0x9e3779b1) | 1;
  for (let i = 0; i < force.length; i += 1) {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    force[i] = (state / 2 ** 31) * Math.sin((Math.PI * (i + 0.5)) / force.length);
  }
  const energy = force.reduce((sum, value) => sum + value * value, 0);
  return force.map((value) => value / Math.sqrt(energy));
}

/**
 * Of a partial after the scrape, beside 1 for a partial that a pluck of the same force gives amplitude 1: an impulse moves every
 * mode alike where a step of force moves it as 1/ω. @param scrapeSeconds impulse over force
 */
export function scrapeWeight(scrapeSeconds: number, fundamentalHz: number, frequencyHz: number): number {
  const low = frequencyHz / Math.hypot(frequencyHz, BAND_FROM_HZ);
  const high = BAND_TO_HZ / Math.hypot(frequencyHz, BAND_TO_HZ);
  return 2 * Math.PI * fundamentalHz * scrapeSeconds * low * high;
}
