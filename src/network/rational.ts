import type { Spectrum } from "./nodal-analysis.ts";

/**
 * A ratio of two real polynomials in p = s/ω0: coefficients in rising powers, numerator and denominator of equal length.
 */
export interface Rational {
  readonly numerator: Float64Array;
  readonly denominator: Float64Array;
  readonly omega0: number;
}

/**
 * A real polynomial at p = jx is even(x²) + j·x·odd(x²). Up to this many coefficients of each kind are kept in local
 * variables, which doubles the speed; a guard rarely has more.
 */
const UNROLLED = 6;

/** Every second coefficient from `first`, its sign alternating as j² does, padded with noughts to `length`. */
function alternating(coefficients: Float64Array, first: 0 | 1, length: number): Float64Array {
  const part = new Float64Array(length);
  for (let k = first, i = 0; k < coefficients.length; k += 2, i++)
    part[i] = i % 2 === 0 ? coefficients[k]! : -coefficients[k]!;
  return part;
}

function horner(coefficients: Float64Array, square: number): number {
  let sum = 0;
  for (let k = coefficients.length - 1; k >= 0; k--) sum = sum * square + coefficients[k]!;
  return sum;
}

type Six = readonly [number, number, number, number, number, number];

/** Fills `even` with even(x²) and `odd` with x·odd(x²) over the given x. */
function polynomialInto(
  coefficients: Float64Array,
  scale: number,
  frequenciesHz: Float64Array,
  even: Float64Array,
  odd: Float64Array,
): void {
  const length = Math.max(UNROLLED, Math.ceil(coefficients.length / 2));
  const e = alternating(coefficients, 0, length);
  const o = alternating(coefficients, 1, length);
  if (length === UNROLLED) {
    const [e0, e1, e2, e3, e4, e5] = e as unknown as Six;
    const [o0, o1, o2, o3, o4, o5] = o as unknown as Six;
    for (let i = 0; i < frequenciesHz.length; i++) {
      const x = frequenciesHz[i]! * scale;
      const q = x * x;
      even[i] = ((((e5 * q + e4) * q + e3) * q + e2) * q + e1) * q + e0;
      odd[i] = (((((o5 * q + o4) * q + o3) * q + o2) * q + o1) * q + o0) * x;
    }
    return;
  }
  for (let i = 0; i < frequenciesHz.length; i++) {
    const x = frequenciesHz[i]! * scale;
    even[i] = horner(e, x * x);
    odd[i] = horner(o, x * x) * x;
  }
}

/** Scratch for the denominator; evaluation never yields, so one is enough. */
let scratchRe = new Float64Array(0);
let scratchIm = new Float64Array(0);

/** The rational at frequencies in Hz. */
export function evaluate({ numerator, denominator, omega0 }: Rational, frequenciesHz: Float64Array): Spectrum {
  const count = frequenciesHz.length;
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  if (scratchRe.length < count) {
    scratchRe = new Float64Array(count);
    scratchIm = new Float64Array(count);
  }
  const scale = (2 * Math.PI) / omega0;
  polynomialInto(numerator, scale, frequenciesHz, re, im);
  const dRes = scratchRe;
  const dIms = scratchIm;
  polynomialInto(denominator, scale, frequenciesHz, dRes, dIms);
  for (let i = 0; i < count; i++) {
    const nRe = re[i]!;
    const nIm = im[i]!;
    const dRe = dRes[i]!;
    const dIm = dIms[i]!;
    const norm = 1 / (dRe * dRe + dIm * dIm);
    re[i] = (nRe * dRe + nIm * dIm) * norm;
    im[i] = (nIm * dRe - nRe * dIm) * norm;
  }
  return { re, im };
}

/** |H|² of the rational, as a function of the frequency in Hz. */
export function powerOf({ numerator, denominator, omega0 }: Rational): (frequencyHz: number) => number {
  const half = Math.ceil(numerator.length / 2);
  const [nEven, nOdd] = [alternating(numerator, 0, half), alternating(numerator, 1, half)];
  const [dEven, dOdd] = [alternating(denominator, 0, half), alternating(denominator, 1, half)];
  return (frequencyHz) => {
    const x = (2 * Math.PI * frequencyHz) / omega0;
    const q = x * x;
    const nRe = horner(nEven, q);
    const nIm = horner(nOdd, q) * x;
    const dRe = horner(dEven, q);
    const dIm = horner(dOdd, q) * x;
    return (nRe * nRe + nIm * nIm) / (dRe * dRe + dIm * dIm);
  };
}
