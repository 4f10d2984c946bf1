import { realFft } from "../../filter/real-fft.ts";

/**
 * The normalised cross-correlation of a recording with a template: at each sample the cosine of the angle between the template
 * and what stands there, −1 to 1; 0 where nothing does.
 */
export function correlate(samples: Float32Array, template: Float64Array): Float64Array {
  return normalised(products(samples, template), samples, template);
}

/** Blocks of so many templates: what the transform of a block costs hardly falls beyond. */
const TEMPLATES_IN_BLOCK = 4;

/** Block by block, of which the last template's length is of the next as well (overlap-save, textbook). */
function products(samples: Float32Array, template: Float64Array): Float64Array {
  const size = 2 ** Math.ceil(Math.log2(TEMPLATES_IN_BLOCK * template.length));
  const fft = realFft(size);
  const [a, b] = [new Float64Array(size + 2), new Float64Array(size + 2)];
  const block = new Float64Array(size);
  block.set(template);
  fft.forward(b, block);
  const step = size - template.length + 1;
  const found = new Float64Array(samples.length);
  for (let from = 0; from < samples.length; from += step) {
    const heard = samples.subarray(from, from + size);
    block.fill(0);
    block.set(heard);
    fft.forward(a, block);
    for (let k = 0; k < a.length; k += 2) {
      const [ar, ai, br, bi] = [a[k]!, a[k + 1]!, b[k]!, b[k + 1]!];
      a[k] = ar * br + ai * bi;
      a[k + 1] = ai * br - ar * bi;
    }
    fft.inverse(block, a);
    found.set(block.subarray(0, Math.min(step, samples.length - from)), from);
  }
  return found;
}

function normalised(found: Float64Array, samples: Float32Array, template: Float64Array): Float64Array {
  const own = Math.sqrt(template.reduce((sum, each) => sum + each * each, 0));
  const before = new Float64Array(samples.length + 1);
  for (let n = 0; n < samples.length; n += 1) before[n + 1] = before[n]! + samples[n]! ** 2;
  const whole = before.at(-1)!;
  // What rounding leaves of the running sum is not sound.
  const least = 1e-12 * whole;
  return found.map((product, n) => {
    const energy = before[Math.min(samples.length, n + template.length)]! - before[n]!;
    return energy > least ? product / (own * Math.sqrt(energy)) : 0;
  });
}
