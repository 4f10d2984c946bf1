import FFT from "fft.js";

/**
 * Discrete Fourier transform of real data, size N a power of two from 4 up. A spectrum is the N/2+1 bins from DC to Nyquist,
 * interleaved `re, im`. Both ways run one complex transform of half the size: even samples as real parts, odd ones as imaginary.
 */
export interface RealFft {
  readonly size: number;
  /** `spectrum` (N+2 numbers) becomes Σ x[n]·e^(−2πikn/N) of `samples` (N numbers). */
  forward(spectrum: Float64Array, samples: Float64Array): void;
  /** `samples` (N numbers) becomes the inverse, 1/N included, of `spectrum` (N+2 numbers, left as it is). */
  inverse(samples: Float64Array, spectrum: Float64Array): void;
}

export function createRealFft(size: number): RealFft {
  const half = size / 2;
  const fft = new FFT(half);
  const scratch = new Float64Array(size);
  const cosines = Float64Array.from({ length: half }, (_, k) => Math.cos((2 * Math.PI * k) / size));
  const sines = Float64Array.from({ length: half }, (_, k) => Math.sin((2 * Math.PI * k) / size));

  function forward(spectrum: Float64Array, samples: Float64Array): void {
    fft.transform(scratch, samples);
    spectrum[0] = scratch[0]! + scratch[1]!;
    spectrum[1] = 0;
    spectrum[size] = scratch[0]! - scratch[1]!;
    spectrum[size + 1] = 0;
    for (let k = 1; k < half; k++) {
      const zr = scratch[2 * k]!;
      const zi = scratch[2 * k + 1]!;
      const mr = scratch[size - 2 * k]!;
      const mi = scratch[size - 2 * k + 1]!;
      const oddRe = (zi + mi) / 2;
      const oddIm = (mr - zr) / 2;
      const c = cosines[k]!;
      const s = sines[k]!;
      spectrum[2 * k] = (zr + mr) / 2 + c * oddRe + s * oddIm;
      spectrum[2 * k + 1] = (zi - mi) / 2 + c * oddIm - s * oddRe;
    }
  }

  function inverse(samples: Float64Array, spectrum: Float64Array): void {
    // The conjugate goes in and comes out again, so that the forward transform serves as the inverse.
    const scale = 1 / size;
    for (let k = 0; k < half; k++) {
      const xr = spectrum[2 * k]!;
      const xi = spectrum[2 * k + 1]!;
      const mr = spectrum[size - 2 * k]!;
      const mi = spectrum[size - 2 * k + 1]!;
      const c = cosines[k]!;
      const s = sines[k]!;
      const oddRe = c * (xr - mr) - s * (xi + mi);
      const oddIm = c * (xi + mi) + s * (xr - mr);
      scratch[2 * k] = (xr + mr - oddIm) * scale;
      scratch[2 * k + 1] = -(xi - mi + oddRe) * scale;
    }
    fft.transform(samples, scratch);
    for (let n = 1; n < size; n += 2) samples[n] = -samples[n]!;
  }

  return { size, forward, inverse };
}

/** Larger plans are rare and their tables run to megabytes, so they are built anew. */
const LARGEST_KEPT_SIZE = 1 << 16;
const plans = new Map<number, RealFft>();

/** The plan of a size, kept for the next call: its tables depend on the size alone, so no answer depends on what was kept. */
export function realFft(size: number): RealFft {
  const kept = plans.get(size);
  if (kept) return kept;
  const plan = createRealFft(size);
  if (size <= LARGEST_KEPT_SIZE) plans.set(size, plan);
  return plan;
}
