import { realFft } from "./real-fft.ts";

/** How a filter ends under the Nyquist frequency. */
export interface Taper {
  /** Fraction of the Nyquist frequency up to which the filter is exact. */
  readonly exactBand: number;
  /** Half the taper's length in samples, and so the delay that every filter keeps. */
  readonly halfLength: number;
}

/** 18.08 kHz at 44.1 kHz; 1 ms. */
export const USUAL_TAPER: Taper = { exactBand: 0.82, halfLength: 48 };
/** A third of the width over three times the length: 45.1 kHz at 96 kHz, 90.2 kHz at 192 kHz, for 1.5 ms and 0.75 ms. */
const FINE_TAPER: Taper = { exactBand: 0.94, halfLength: 144 };
/** Above it a rate is chosen for what lies beyond hearing. */
const MOST_USUAL_RATE_HZ = 50_000;

export function taperAt(sampleRateHz: number): Taper {
  return sampleRateHz > MOST_USUAL_RATE_HZ ? FINE_TAPER : USUAL_TAPER;
}

/** Kaiser's estimate for a transition from 0.82 to 1 Nyquist over 96 samples, and for a third of it over 288: the ripple is 132 dB down. */
const ATTENUATION_DB = 2.285 * (1 - USUAL_TAPER.exactBand) * Math.PI * 2 * USUAL_TAPER.halfLength + 8;
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
function taperKernel(n: number, { exactBand, halfLength }: Taper): number {
  const cutoff = (1 + exactBand) / 2;
  const x = Math.PI * n;
  const sinc = n === 0 ? cutoff : Math.sin(cutoff * x) / x;
  return sinc * kaiser(n / halfLength, KAISER_BETA);
}

const tapers = new Map<string, Float64Array>();

/**
 * The real, zero-phase gain at the size/2+1 bins of a transform: 1 up to the exact band's end, falling smoothly to 0 at Nyquist.
 * Its kernel is no longer than ±halfLength samples, so a causal response tapered with it starts no earlier than that.
 */
export function bandTaper(size: number, taper: Taper): Float64Array {
  const { halfLength } = taper;
  const key = `${size} ${halfLength}`;
  const kept = tapers.get(key);
  if (kept) return kept;
  const kernel = new Float64Array(size);
  for (let n = -halfLength; n <= halfLength; n++) kernel[(n + size) % size] = taperKernel(n, taper);
  const spectrum = new Float64Array(size + 2);
  realFft(size).forward(spectrum, kernel);
  const dc = spectrum[0]!;
  const gains = Float64Array.from({ length: size / 2 + 1 }, (_, k) => spectrum[2 * k]! / dc);
  if (size <= 1 << 16) tapers.set(key, gains);
  return gains;
}
