import type { RationalTransfers } from "../network/parametric.ts";
import type { Polynomial } from "../network/polynomials.ts";
import { type MetalFactor, metalFactors } from "./emf-law.ts";
import type { CoilSource } from "./pickup-elements.ts";

/** A product with 1 + jf/corner, in powers of s/ω0; a corner at infinity is 1. */
function withCorner({ coefficients, rounding, noise }: Polynomial, cornerHz: number, omega0: number): Polynomial {
  const slope = omega0 / (2 * Math.PI * cornerHz);
  return { coefficients: withSlope(coefficients, slope), rounding: withSlope(rounding, slope), noise };
}

function withSlope(polynomial: Float64Array, slope: number): Float64Array {
  const product = new Float64Array(polynomial.length + 1);
  for (const [power, coefficient] of polynomial.entries()) {
    product[power]! += coefficient;
    product[power + 1]! += slope * coefficient;
  }
  return product;
}

/** As often as each metal is on any one coil. */
function commonFactors(lists: readonly (readonly MetalFactor[])[]): MetalFactor[] {
  const common: MetalFactor[] = [];
  for (const list of lists) {
    const spare = [...common];
    for (const factor of list) {
      const at = spare.findIndex(({ zeroHz, poleHz }) => zeroHz === factor.zeroHz && poleHz === factor.poleHz);
      if (at < 0) common.push(factor);
      else spare.splice(at, 1);
    }
  }
  return common;
}

/** Of the common factors a coil has its own as they are; to the others' poles, which the denominator has, it has a zero. */
function numeratorCorners(common: readonly MetalFactor[], own: readonly MetalFactor[]): number[] {
  const rest = [...own];
  return common.map(({ zeroHz, poleHz }) => {
    const at = rest.findIndex((factor) => factor.zeroHz === zeroHz && factor.poleHz === poleHz);
    if (at < 0) return poleHz;
    rest.splice(at, 1);
    return zeroHz;
  });
}

/**
 * Transfers from the EMF that each coil would have without the metal about it. Every metal is a pole and perhaps a zero, so that
 * polynomials hold it exactly: the denominator takes the poles of all that sound, each numerator its zeros.
 */
export function shieldedTransfers(inner: RationalTransfers, sources: readonly CoilSource[]): RationalTransfers {
  const { numerators, denominator, omega0 } = inner;
  const factors = sources.map(({ spec }, i) => (numerators[i] ? metalFactors(spec.shielding) : []));
  const common = commonFactors(factors);
  if (common.length === 0) return inner;
  const times = (polynomial: Polynomial, corners: readonly number[]) =>
    corners.reduce((product, corner) => withCorner(product, corner, omega0), polynomial);
  return {
    numerators: numerators.map((numerator, i) => numerator && times(numerator, numeratorCorners(common, factors[i]!))),
    denominator: times(
      denominator,
      common.map(({ poleHz }) => poleHz),
    ),
    omega0,
  };
}
