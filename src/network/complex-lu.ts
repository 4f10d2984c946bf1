import { PresolderError } from "../errors.ts";

/**
 * Solves A x = b for a complex dense matrix by LU with partial pivoting, in place.
 * @param re real parts of A, row-major, size × size; overwritten
 * @param im imaginary parts of A; overwritten
 * @param xRe real parts of b on entry and of x on return, length size
 * @param xIm imaginary parts likewise
 * @throws PresolderError NETWORK_SINGULAR where a column has no usable pivot.
 */
export function solveComplex(
  re: Float64Array,
  im: Float64Array,
  xRe: Float64Array,
  xIm: Float64Array,
  size: number,
): void {
  for (let k = 0; k < size; k++) {
    pivot(re, im, xRe, xIm, size, k);
    eliminate(re, im, xRe, xIm, size, k);
  }
  backSubstitute(re, im, xRe, xIm, size);
}

function pivot(
  re: Float64Array,
  im: Float64Array,
  xRe: Float64Array,
  xIm: Float64Array,
  size: number,
  k: number,
): void {
  let best = -1;
  let bestSize = 0;
  for (let row = k; row < size; row++) {
    const at = row * size + k;
    const magnitude = Math.abs(re[at]!) + Math.abs(im[at]!);
    if (magnitude > bestSize) {
      bestSize = magnitude;
      best = row;
    }
  }
  if (best < 0 || !Number.isFinite(bestSize))
    throw new PresolderError("NETWORK_SINGULAR", "the network's equations have no unique solution");
  if (best === k) return;
  for (let column = k; column < size; column++) {
    swap(re, best * size + column, k * size + column);
    swap(im, best * size + column, k * size + column);
  }
  swap(xRe, best, k);
  swap(xIm, best, k);
}

function swap(values: Float64Array, i: number, j: number): void {
  const kept = values[i]!;
  values[i] = values[j]!;
  values[j] = kept;
}

function eliminate(
  re: Float64Array,
  im: Float64Array,
  xRe: Float64Array,
  xIm: Float64Array,
  size: number,
  k: number,
): void {
  const top = k * size;
  const pRe = re[top + k]!;
  const pIm = im[top + k]!;
  const norm = pRe * pRe + pIm * pIm;
  const invRe = pRe / norm;
  const invIm = -pIm / norm;
  for (let row = k + 1; row < size; row++) {
    const base = row * size;
    const aRe = re[base + k]!;
    const aIm = im[base + k]!;
    if (aRe === 0 && aIm === 0) continue;
    const fRe = aRe * invRe - aIm * invIm;
    const fIm = aRe * invIm + aIm * invRe;
    for (let column = k + 1; column < size; column++) {
      const tRe = re[top + column]!;
      const tIm = im[top + column]!;
      re[base + column] = re[base + column]! - (fRe * tRe - fIm * tIm);
      im[base + column] = im[base + column]! - (fRe * tIm + fIm * tRe);
    }
    xRe[row] = xRe[row]! - (fRe * xRe[k]! - fIm * xIm[k]!);
    xIm[row] = xIm[row]! - (fRe * xIm[k]! + fIm * xRe[k]!);
  }
}

function backSubstitute(re: Float64Array, im: Float64Array, xRe: Float64Array, xIm: Float64Array, size: number): void {
  for (let row = size - 1; row >= 0; row--) {
    let sumRe = xRe[row]!;
    let sumIm = xIm[row]!;
    for (let column = row + 1; column < size; column++) {
      const at = row * size + column;
      sumRe -= re[at]! * xRe[column]! - im[at]! * xIm[column]!;
      sumIm -= re[at]! * xIm[column]! + im[at]! * xRe[column]!;
    }
    const at = row * size + row;
    const norm = re[at]! * re[at]! + im[at]! * im[at]!;
    xRe[row] = (sumRe * re[at]! + sumIm * im[at]!) / norm;
    xIm[row] = (sumIm * re[at]! - sumRe * im[at]!) / norm;
  }
}
