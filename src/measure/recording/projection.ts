/** Samples whose turns against the first of them are reckoned once for all blocks of so many. */
const BLOCK = 64;

/**
 * Σ x[n]·cos(angle + step·n) and Σ x[n]·sin(angle + step·n).
 * @param step radians a sample
 */
export function projection(samples: Float64Array, step: number, angle = 0) {
  const cosines = new Float64Array(BLOCK);
  const sines = new Float64Array(BLOCK);
  for (let k = 0; k < BLOCK; k += 1) {
    cosines[k] = Math.cos(step * k);
    sines[k] = Math.sin(step * k);
  }
  let [onCosine, onSine] = [0, 0];
  for (let from = 0; from < samples.length; from += BLOCK) {
    const count = Math.min(BLOCK, samples.length - from);
    let [re, im] = [0, 0];
    for (let k = 0; k < count; k += 1) {
      const x = samples[from + k]!;
      re += x * cosines[k]!;
      im += x * sines[k]!;
    }
    const [cos, sin] = [Math.cos(angle + step * from), Math.sin(angle + step * from)];
    onCosine += cos * re - sin * im;
    onSine += sin * re + cos * im;
  }
  return { onCosine, onSine };
}
