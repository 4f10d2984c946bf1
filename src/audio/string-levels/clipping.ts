/** So many samples in a row at the very top are a flat top; a low string's crest, at any usual rate, is not as flat. */
const FLAT_SAMPLES = 4;
/** Of the peak. */
const FLAT = 2e-5;
/** Under it a flat top is the coarse steps of a quiet file. */
const NEAR_FULL_SCALE = 0.97;

/** The first sample of a flat top near full scale; undefined where nothing is clipped. */
export function clippedAt(samples: Float32Array): number | undefined {
  const peak = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  if (peak < NEAR_FULL_SCALE) return undefined;
  const top = peak * (1 - FLAT);
  for (let n = 0, run = 0; n < samples.length; n++) {
    run = Math.abs(samples[n]!) >= top ? run + 1 : 0;
    if (run === FLAT_SAMPLES) return n - FLAT_SAMPLES + 1;
  }
  return undefined;
}
