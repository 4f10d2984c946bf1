import type { FittedPolynomial } from "./sample-circle.ts";

/** Numerators of the sources' transfers in the order of `sources`, then the denominator, in rising powers of s/OMEGA0. */
export type Polynomials = readonly Float64Array[];

/** How many times its rounding a coefficient has to be to be one. */
const BEYOND_ROUNDING = 100;

/**
 * Cuts off the highest powers where none of the polynomials has more than rounding there, and brings the denominator's largest
 * coefficient to 1: a determinant may be of any size, and curves multiply four values of these polynomials.
 */
export function tidied(fitted: readonly FittedPolynomial[]): Polynomials {
  const isRounding = ({ coefficients, rounding }: FittedPolynomial, k: number) =>
    Math.abs(coefficients[k]!) <= BEYOND_ROUNDING * rounding[k]!;
  let length = fitted[0]!.coefficients.length;
  while (length > 1 && fitted.every((each) => isRounding(each, length - 1))) length--;
  const scale = 1 / largestOf(fitted.at(-1)!.coefficients);
  return fitted.map(({ coefficients }) => {
    const kept = coefficients.slice(0, length);
    for (let k = 0; k < length; k++) kept[k]! *= scale;
    return kept;
  });
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
