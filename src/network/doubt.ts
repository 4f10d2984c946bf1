import { SILENT_POWER } from "../decibels.ts";
import { sumAt } from "./polynomials.ts";
import type { Rational, RationalParts } from "./rational.ts";

/** Of numerator or denominator, by how much of itself it may be off: together 0.0003 dB and 0.002°. */
const TOLERATED = 2e-5;
/** Of the transfer itself: a thousandth of what −150 dB are. */
const TOLERATED_FLOOR = 1e-12;
/** Neighbours that one bound serves, as long as it allows. */
const BLOCK = 32;
/** Whether −200 dB are under silence is for the plain solution to say. */
const NEAR_SILENCE = 1.05;

/** Over a list of frequencies the least squares of the magnitudes of numerator and denominator. */
export interface LeastSquares {
  readonly n: number;
  readonly d: number;
}

function leastSquares({ nRe, nIm, dRe, dIm }: RationalParts, from: number, to: number): LeastSquares {
  let leastN = Number.POSITIVE_INFINITY;
  let leastD = Number.POSITIVE_INFINITY;
  for (let i = from; i < to; i++) {
    const n = nRe[i]! * nRe[i]! + nIm[i]! * nIm[i]!;
    const d = dRe[i]! * dRe[i]! + dIm[i]! * dIm[i]!;
    if (n < leastN) leastN = n;
    if (d < leastD) leastD = d;
  }
  return { n: leastN, d: leastD };
}

/** Whether a rational is beyond doubt up to a frequency, wherever its parts are no less than these. */
export function isBeyondDoubt({ doubt, omega0 }: Rational, highestHz: number, least: LeastSquares): boolean {
  if (!doubt) return true;
  const x = (2 * Math.PI * highestHz) / omega0;
  const offN = sumAt(doubt.numerator, x);
  const offD = sumAt(doubt.denominator, x);
  const share = TOLERATED * TOLERATED;
  return offD * offD <= share * least.d && offN * offN <= share * least.n;
}

/**
 * Where the rounding of a rational's coefficients and of its evaluation may show: near lightly damped resonances, where the
 * denominator is what is left of large terms, in notches, and far above and below the resonances.
 * @param parts values of numerator and denominator at these frequencies
 * @returns indexes of the frequencies at which the plain solution should answer
 */
export function doubtfulPoints(rational: Rational, parts: RationalParts, frequenciesHz: Float64Array): number[] {
  const doubtful: number[] = [];
  const count = frequenciesHz.length;
  for (let from = 0; from < count; from += BLOCK) {
    const to = Math.min(from + BLOCK, count);
    let highest = 0;
    for (let i = from; i < to; i++) if (frequenciesHz[i]! > highest) highest = frequenciesHz[i]!;
    if (isBeyondDoubt(rational, highest, leastSquares(parts, from, to))) continue;
    for (let i = from; i < to; i++) if (isDoubtful(rational, parts, i, frequenciesHz[i]!)) doubtful.push(i);
  }
  return doubtful;
}

/** By how much each value may be off; Infinity where the denominator may be nothing. */
export function offsOf({ doubt, omega0 }: Rational, parts: RationalParts, frequenciesHz: Float64Array): Float64Array {
  const scale = (2 * Math.PI) / omega0;
  return frequenciesHz.map((frequencyHz, i) => {
    if (!doubt) return 0;
    const d = Math.hypot(parts.dRe[i]!, parts.dIm[i]!);
    const offD = sumAt(doubt.denominator, frequencyHz * scale);
    if (!(offD < d)) return Number.POSITIVE_INFINITY;
    const size = Math.hypot(parts.nRe[i]!, parts.nIm[i]!) / d;
    return (sumAt(doubt.numerator, frequencyHz * scale) + size * offD) / (d - offD);
  });
}

function isDoubtful(
  { doubt, omega0 }: Rational,
  { nRe, nIm, dRe, dIm }: RationalParts,
  i: number,
  hertz: number,
): boolean {
  if (!doubt) return false;
  const n = nRe[i]! * nRe[i]! + nIm[i]! * nIm[i]!;
  const d = dRe[i]! * dRe[i]! + dIm[i]! * dIm[i]!;
  const x = (2 * Math.PI * hertz) / omega0;
  const offN = sumAt(doubt.numerator, x);
  const offD = sumAt(doubt.denominator, x);
  const share = TOLERATED * TOLERATED;
  if (!(offD * offD <= share * d)) return true;
  const isNearSilence = n < NEAR_SILENCE * SILENT_POWER * d && n * NEAR_SILENCE > SILENT_POWER * d;
  return isNearSilence || !(offN * offN <= Math.max(share * n, TOLERATED_FLOOR * TOLERATED_FLOOR * d));
}
