import type { Spectrum } from "./nodal-analysis.ts";

/**
 * A ratio of two real polynomials in p = s/ω0: coefficients in rising powers, numerator and denominator of equal length.
 */
export interface Rational {
  readonly numerator: Float64Array;
  readonly denominator: Float64Array;
  readonly omega0: number;
}

/** The value of a real polynomial at p = jx, as its even and odd parts in x². */
function evenAt(coefficients: Float64Array, square: number): number {
  let sum = 0;
  for (let k = (coefficients.length - 1) & ~1; k >= 0; k -= 2) sum = coefficients[k]! - sum * square;
  return sum;
}

function oddAt(coefficients: Float64Array, x: number, square: number): number {
  let sum = 0;
  for (let k = ((coefficients.length - 2) & ~1) + 1; k >= 1; k -= 2) sum = coefficients[k]! - sum * square;
  return sum * x;
}

/**
 * Evaluates a rational at frequencies in Hz.
 * @param re receives real parts, of the frequencies' length
 * @param im receives imaginary parts likewise
 */
export function evaluateInto(
  rational: Rational,
  frequenciesHz: Float64Array,
  re: Float64Array,
  im: Float64Array,
): void {
  const { numerator, denominator } = rational;
  const scale = (2 * Math.PI) / rational.omega0;
  for (let i = 0; i < frequenciesHz.length; i++) {
    const x = frequenciesHz[i]! * scale;
    const square = x * x;
    const nRe = evenAt(numerator, square);
    const nIm = oddAt(numerator, x, square);
    const dRe = evenAt(denominator, square);
    const dIm = oddAt(denominator, x, square);
    const norm = 1 / (dRe * dRe + dIm * dIm);
    re[i] = (nRe * dRe + nIm * dIm) * norm;
    im[i] = (nIm * dRe - nRe * dIm) * norm;
  }
}

/** |H|² at one frequency in Hz. */
export function powerAt(rational: Rational, frequencyHz: number): number {
  const { numerator, denominator } = rational;
  const x = (2 * Math.PI * frequencyHz) / rational.omega0;
  const square = x * x;
  const nRe = evenAt(numerator, square);
  const nIm = oddAt(numerator, x, square);
  const dRe = evenAt(denominator, square);
  const dIm = oddAt(denominator, x, square);
  return (nRe * nRe + nIm * nIm) / (dRe * dRe + dIm * dIm);
}

export function evaluate(rational: Rational, frequenciesHz: Float64Array): Spectrum {
  const re = new Float64Array(frequenciesHz.length);
  const im = new Float64Array(frequenciesHz.length);
  evaluateInto(rational, frequenciesHz, re, im);
  return { re, im };
}
