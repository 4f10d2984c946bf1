/** Turns are exact again every so many samples. */
const RENEWED_EVERY = 1024;

/**
 * Σ x[n]·cos(angle + step·n) and Σ x[n]·sin(angle + step·n).
 * @param step radians a sample
 */
export function projection(samples: Float64Array, step: number, angle = 0) {
  const [turnRe, turnIm] = [Math.cos(step), Math.sin(step)];
  let [onCosine, onSine, cos, sin] = [0, 0, 0, 0];
  for (let n = 0; n < samples.length; n += 1) {
    if (n % RENEWED_EVERY === 0) [cos, sin] = [Math.cos(angle + step * n), Math.sin(angle + step * n)];
    onCosine += samples[n]! * cos;
    onSine += samples[n]! * sin;
    const next = cos * turnRe - sin * turnIm;
    sin = sin * turnRe + cos * turnIm;
    cos = next;
  }
  return { onCosine, onSine };
}
