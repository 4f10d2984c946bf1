import type { Spectrum } from "./nodal-analysis.ts";

/**
 * A ratio of two real polynomials in p = s/ω0: coefficients in rising powers, numerator and denominator of equal length.
 */
export interface Rational {
  readonly numerator: Float64Array;
  readonly denominator: Float64Array;
  readonly omega0: number;
  /** By how much each coefficient may be off, what evaluating it rounds included; of a rational that is exact, absent. */
  readonly doubt?: { readonly numerator: Float64Array; readonly denominator: Float64Array };
}

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

type Terms = Readonly<Record<number, number>>;
type Fill = (e: Terms, o: Terms, scale: number, x: Float64Array, even: Float64Array, odd: Float64Array) => void;

/**
 * A real polynomial at p = jx is even(x²) + j·x·odd(x²). These have their coefficients in local variables, which doubles the
 * speed; the number is how many of each kind there are at most. A guard rarely has more than six.
 */
const UNROLLED: readonly (readonly [terms: number, fill: Fill])[] = [
  [
    3,
    (e, o, scale, frequenciesHz, even, odd) => {
      const { 0: e0, 1: e1, 2: e2 } = e;
      const { 0: o0, 1: o1, 2: o2 } = o;
      for (let i = 0; i < frequenciesHz.length; i++) {
        const x = frequenciesHz[i]! * scale;
        const q = x * x;
        even[i] = (e2! * q + e1!) * q + e0!;
        odd[i] = ((o2! * q + o1!) * q + o0!) * x;
      }
    },
  ],
  [
    4,
    (e, o, scale, frequenciesHz, even, odd) => {
      const { 0: e0, 1: e1, 2: e2, 3: e3 } = e;
      const { 0: o0, 1: o1, 2: o2, 3: o3 } = o;
      for (let i = 0; i < frequenciesHz.length; i++) {
        const x = frequenciesHz[i]! * scale;
        const q = x * x;
        even[i] = ((e3! * q + e2!) * q + e1!) * q + e0!;
        odd[i] = (((o3! * q + o2!) * q + o1!) * q + o0!) * x;
      }
    },
  ],
  [
    6,
    (e, o, scale, frequenciesHz, even, odd) => {
      const { 0: e0, 1: e1, 2: e2, 3: e3, 4: e4, 5: e5 } = e;
      const { 0: o0, 1: o1, 2: o2, 3: o3, 4: o4, 5: o5 } = o;
      for (let i = 0; i < frequenciesHz.length; i++) {
        const x = frequenciesHz[i]! * scale;
        const q = x * x;
        even[i] = ((((e5! * q + e4!) * q + e3!) * q + e2!) * q + e1!) * q + e0!;
        odd[i] = (((((o5! * q + o4!) * q + o3!) * q + o2!) * q + o1!) * q + o0!) * x;
      }
    },
  ],
];

/** Fills `even` with even(x²) and `odd` with x·odd(x²) over x = scale · frequency. */
function polynomialInto(
  coefficients: Float64Array,
  scale: number,
  frequenciesHz: Float64Array,
  even: Float64Array,
  odd: Float64Array,
): void {
  const half = Math.ceil(coefficients.length / 2);
  const unrolled = UNROLLED.find(([terms]) => terms >= half);
  const length = unrolled?.[0] ?? half;
  const e = alternating(coefficients, 0, length);
  const o = alternating(coefficients, 1, length);
  if (unrolled) {
    unrolled[1](e, o, scale, frequenciesHz, even, odd);
    return;
  }
  for (let i = 0; i < frequenciesHz.length; i++) {
    const x = frequenciesHz[i]! * scale;
    even[i] = horner(e, x * x);
    odd[i] = horner(o, x * x) * x;
  }
}

/** Values of numerator and denominator over a list of frequencies. */
export interface RationalParts {
  readonly nRe: Float64Array;
  readonly nIm: Float64Array;
  readonly dRe: Float64Array;
  readonly dIm: Float64Array;
}

/** Room for `partsInto` at so many frequencies. */
export function emptyParts(count: number): RationalParts {
  const part = () => new Float64Array(count);
  return { nRe: part(), nIm: part(), dRe: part(), dIm: part() };
}

/**
 * Numerator and denominator at frequencies in Hz, written into the caller's own room, or into new room where that is too short.
 * @returns what was written into; it may be longer than the list
 */
export function partsInto(
  given: RationalParts,
  { numerator, denominator, omega0 }: Rational,
  frequenciesHz: Float64Array,
): RationalParts {
  const parts = given.nRe.length < frequenciesHz.length ? emptyParts(frequenciesHz.length) : given;
  const scale = (2 * Math.PI) / omega0;
  polynomialInto(numerator, scale, frequenciesHz, parts.nRe, parts.nIm);
  polynomialInto(denominator, scale, frequenciesHz, parts.dRe, parts.dIm);
  return parts;
}

/** The quotient of values at so many frequencies. */
export function quotientOf({ nRe, nIm, dRe, dIm }: RationalParts, count: number): Spectrum {
  const [re, im] = [new Float64Array(count), new Float64Array(count)];
  for (let i = 0; i < count; i++) {
    const a = nRe[i]!;
    const b = nIm[i]!;
    const c = dRe[i]!;
    const d = dIm[i]!;
    const norm = 1 / (c * c + d * d);
    re[i] = (a * c + b * d) * norm;
    im[i] = (b * c - a * d) * norm;
  }
  return { re, im };
}

/** Of `evaluate`, which never yields and hands none of it out. */
let room = emptyParts(0);

/** The rational at frequencies in Hz. */
export function evaluate(rational: Rational, frequenciesHz: Float64Array): Spectrum {
  room = partsInto(room, rational, frequenciesHz);
  return quotientOf(room, frequenciesHz.length);
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
