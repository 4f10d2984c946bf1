import { createRealFft } from "../../filter/real-fft.ts";

/**
 * The normalised cross-correlation of a recording with a template: at each sample the cosine of the angle between the template
 * and what stands there, −1 to 1; 0 where nothing does.
 */
export function correlate(samples: Float32Array, template: Float64Array): Float64Array {
  const size = 2 ** Math.ceil(Math.log2(samples.length + template.length));
  const fft = createRealFft(size);
  const [a, b] = [new Float64Array(size + 2), new Float64Array(size + 2)];
  const padded = new Float64Array(size);
  padded.set(samples);
  fft.forward(a, padded);
  padded.fill(0);
  padded.set(template);
  fft.forward(b, padded);
  for (let k = 0; k < a.length; k += 2) {
    const [ar, ai, br, bi] = [a[k]!, a[k + 1]!, b[k]!, b[k + 1]!];
    a[k] = ar * br + ai * bi;
    a[k + 1] = ai * br - ar * bi;
  }
  fft.inverse(padded, a);
  return normalised(padded.subarray(0, samples.length), samples, template);
}

function normalised(products: Float64Array, samples: Float32Array, template: Float64Array): Float64Array {
  const own = Math.sqrt(template.reduce((sum, each) => sum + each * each, 0));
  const before = new Float64Array(samples.length + 1);
  for (let n = 0; n < samples.length; n += 1) before[n + 1] = before[n]! + samples[n]! ** 2;
  const whole = before.at(-1)!;
  // What rounding leaves of the running sum is not sound.
  const least = 1e-12 * whole;
  return products.map((product, n) => {
    const energy = before[Math.min(samples.length, n + template.length)]! - before[n]!;
    return energy > least ? product / (own * Math.sqrt(energy)) : 0;
  });
}
