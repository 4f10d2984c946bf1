import type { FittedPolynomial } from "./sample-circle.ts";

/** A polynomial in rising powers of s/OMEGA0, with what it takes to say by how much each coefficient may be off. */
export interface Polynomial {
  readonly coefficients: Float64Array;
  /** Of each coefficient, and perhaps of higher ones that were cut off; times `noise` that is how far it may be off. */
  readonly rounding: Float64Array;
  readonly noise: number;
}

/** How many times its rounding a coefficient has to be to be one. */
const BEYOND_ROUNDING = 100;

/**
 * Cuts off the highest powers where none of the polynomials has more than rounding there, and brings the last one's largest
 * coefficient to 1: a determinant may be of any size, and curves multiply four values of these polynomials.
 * @returns their coefficients, and what these were multiplied by
 */
export function tidied(fitted: readonly FittedPolynomial[]): { polynomials: Float64Array[]; scale: number } {
  const isRounding = ({ coefficients, rounding }: FittedPolynomial, k: number) =>
    Math.abs(coefficients[k]!) <= BEYOND_ROUNDING * rounding[k]!;
  let length = fitted[0]!.coefficients.length;
  while (length > 1 && fitted.every((each) => isRounding(each, length - 1))) length--;
  const scale = 1 / largestOf(fitted.at(-1)!.coefficients);
  const polynomials = fitted.map(({ coefficients }) => {
    const kept = coefficients.slice(0, length);
    for (let k = 0; k < length; k++) kept[k]! *= scale;
    return kept;
  });
  return { polynomials, scale };
}

/**
 * Adds to `doubt` by how much each coefficient of `weight` times the polynomial may be off: its noise, and what its evaluation by
 * Horner's rule rounds (N. J. Higham, Accuracy and Stability of Numerical Algorithms, 2nd ed., 5.1).
 */
export function addDoubt(doubt: Float64Array, { coefficients, rounding, noise }: Polynomial, weight: number): void {
  const size = Math.abs(weight);
  for (let k = 0; k < coefficients.length; k++)
    doubt[k]! += size * (noise * rounding[k]! + (2 * k + 1) * Number.EPSILON * Math.abs(coefficients[k]!));
}

export function doubtOf(polynomial: Polynomial): Float64Array {
  const doubt = new Float64Array(polynomial.coefficients.length);
  addDoubt(doubt, polynomial, 1);
  return doubt;
}

function largestOf(values: Float64Array): number {
  let largest = 0;
  for (let k = 0; k < values.length; k++) largest = Math.max(largest, Math.abs(values[k]!));
  return largest;
}

/** A polynomial in s/OMEGA0 at s = j·x·OMEGA0. */
export function valueAt(polynomial: Float64Array, x: number): [re: number, im: number] {
  let re = 0;
  let im = 0;
  for (let k = polynomial.length - 1; k >= 0; k--) {
    const kept = re;
    re = polynomial[k]! - im * x;
    im = kept * x;
  }
  return [re, im];
}

/** The sum of c·xᵏ, over so many powers. */
export function sumAt(coefficients: Float64Array, x: number, length = coefficients.length): number {
  let sum = 0;
  for (let k = length - 1; k >= 0; k--) sum = sum * x + coefficients[k]!;
  return sum;
}
