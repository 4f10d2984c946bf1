import { realFft } from "./real-fft.ts";

/** Fraction of the Nyquist frequency up to which a filter is exact: 18.08 kHz at 44.1 kHz. */
export const EXACT_BAND = 0.82;

/** Half the taper's length in samples, and so the delay that every filter keeps. */
export const TAPER_HALF_LENGTH = 48;

/** Kaiser's estimate for a transition from 0.82 to 1 Nyquist over 96 samples: the ripple is 132 dB down. */
const ATTENUATION_DB = 2.285 * (1 - EXACT_BAND) * Math.PI * 2 * TAPER_HALF_LENGTH + 8;
const KAISER_BETA = 0.1102 * (ATTENUATION_DB - 8.7);

/** Modified Bessel function of the first kind, order 0 (Abramowitz & Stegun 9.6.12, the power series). */
export function besselI0(x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > 1e-17 * sum; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}

/** Kaiser window at `position` from −1 to 1 (Kaiser & Schafer, IEEE Trans. ASSP-28, 1980). */
export function kaiser(position: number, beta: number): number {
  return besselI0(beta * Math.sqrt(Math.max(0, 1 - position * position))) / besselI0(beta);
}

/** Windowed sinc, −6 dB midway between the exact band and Nyquist, around sample 0. */
function taperKernel(n: number): number {
  const cutoff = (1 + EXACT_BAND) / 2;
  const x = Math.PI * n;
  const sinc = n === 0 ? cutoff : Math.sin(cutoff * x) / x;
  return sinc * kaiser(n / TAPER_HALF_LENGTH, KAISER_BETA);
}

const tapers = new Map<number, Float64Array>();

/**
 * The real, zero-phase gain at the size/2+1 bins of a transform: 1 up to 0.82 Nyquist, falling smoothly to 0 at Nyquist.
 * Its kernel is no longer than ±TAPER_HALF_LENGTH samples, so a causal response tapered with it starts no earlier than that.
 */
export function bandTaper(size: number): Float64Array {
  const kept = tapers.get(size);
  if (kept) return kept;
  const kernel = new Float64Array(size);
  for (let n = -TAPER_HALF_LENGTH; n <= TAPER_HALF_LENGTH; n++) kernel[(n + size) % size] = taperKernel(n);
  const spectrum = new Float64Array(size + 2);
  realFft(size).forward(spectrum, kernel);
  const dc = spectrum[0]!;
  const taper = Float64Array.from({ length: size / 2 + 1 }, (_, k) => spectrum[2 * k]! / dc);
  if (size <= 1 << 16) tapers.set(size, taper);
  return taper;
}
