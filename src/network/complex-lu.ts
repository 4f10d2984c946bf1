/** Of the largest candidate: a pivot on the diagonal that is not smaller keeps the order of elimination, and so its noughts. */
const LARGE_ENOUGH = 0.01;

/** Work space for the LU factorisation of complex dense matrices, row-major, with partial pivoting. */
export class ComplexLu {
  readonly size: number;
  /** Set these to the matrix before `factor`; they hold its factors afterwards. */
  readonly re: Float64Array;
  readonly im: Float64Array;
  detRe = 1;
  detIm = 0;
  /** The least |re| + |im| of the pivots met: how many digits elimination lost to cancellation. */
  smallestPivot = Number.POSITIVE_INFINITY;
  readonly #swappedWith: Int32Array;

  constructor(size: number) {
    this.size = size;
    this.re = new Float64Array(size * size);
    this.im = new Float64Array(size * size);
    this.#swappedWith = new Int32Array(size);
  }

  /** Factors in place and leaves the determinant in `detRe`, `detIm`. @returns false where the matrix is singular. */
  factor(): boolean {
    this.detRe = 1;
    this.detIm = 0;
    this.smallestPivot = Number.POSITIVE_INFINITY;
    for (let k = 0; k < this.size; k++) {
      if (!this.#pivot(k)) return false;
      this.#eliminate(k);
    }
    return true;
  }

  #pivot(k: number): boolean {
    const { size, re, im } = this;
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
    if (best < 0 || !Number.isFinite(bestSize)) return false;
    const onDiagonal = Math.abs(re[k * size + k]!) + Math.abs(im[k * size + k]!);
    if (onDiagonal >= LARGE_ENOUGH * bestSize) {
      best = k;
      bestSize = onDiagonal;
    }
    this.#swappedWith[k] = best;
    this.smallestPivot = Math.min(this.smallestPivot, bestSize);
    if (best !== k) this.#swapRows(best, k);
    const at = k * size + k;
    const sign = best === k ? 1 : -1;
    const detRe = (this.detRe * re[at]! - this.detIm * im[at]!) * sign;
    this.detIm = (this.detRe * im[at]! + this.detIm * re[at]!) * sign;
    this.detRe = detRe;
    return true;
  }

  #swapRows(a: number, b: number): void {
    const { size, re, im } = this;
    for (let column = 0; column < size; column++) {
      const i = a * size + column;
      const j = b * size + column;
      const keptRe = re[i]!;
      const keptIm = im[i]!;
      re[i] = re[j]!;
      im[i] = im[j]!;
      re[j] = keptRe;
      im[j] = keptIm;
    }
  }

  #eliminate(k: number): void {
    const { size, re, im } = this;
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
      re[base + k] = fRe;
      im[base + k] = fIm;
      for (let column = k + 1; column < size; column++) {
        const tRe = re[top + column]!;
        const tIm = im[top + column]!;
        if (tRe === 0 && tIm === 0) continue;
        re[base + column] = re[base + column]! - (fRe * tRe - fIm * tIm);
        im[base + column] = im[base + column]! - (fRe * tIm + fIm * tRe);
      }
    }
  }

  /** Solves for one right-hand side in place: b on entry, x on return; both of length `size`. Call `factor` first. */
  solve(xRe: Float64Array, xIm: Float64Array): void {
    const { size, re, im } = this;
    for (let k = 0; k < size; k++) {
      const other = this.#swappedWith[k]!;
      if (other !== k) {
        const keptRe = xRe[other]!;
        const keptIm = xIm[other]!;
        xRe[other] = xRe[k]!;
        xIm[other] = xIm[k]!;
        xRe[k] = keptRe;
        xIm[k] = keptIm;
      }
    }
    let first = 0;
    while (first < size && xRe[first] === 0 && xIm[first] === 0) first++;
    for (let row = first + 1; row < size; row++) this.#subtractProduct(xRe, xIm, row, first, row);
    for (let row = size - 1; row >= 0; row--) {
      this.#subtractProduct(xRe, xIm, row, row + 1, size);
      const at = row * size + row;
      const norm = re[at]! * re[at]! + im[at]! * im[at]!;
      const sumRe = xRe[row]!;
      const sumIm = xIm[row]!;
      xRe[row] = (sumRe * re[at]! + sumIm * im[at]!) / norm;
      xIm[row] = (sumIm * re[at]! - sumRe * im[at]!) / norm;
    }
  }

  #subtractProduct(xRe: Float64Array, xIm: Float64Array, row: number, from: number, to: number): void {
    const { size, re, im } = this;
    let sumRe = xRe[row]!;
    let sumIm = xIm[row]!;
    for (let column = from; column < to; column++) {
      const aRe = re[row * size + column]!;
      const aIm = im[row * size + column]!;
      if (aRe === 0 && aIm === 0) continue;
      sumRe -= aRe * xRe[column]! - aIm * xIm[column]!;
      sumIm -= aRe * xIm[column]! + aIm * xRe[column]!;
    }
    xRe[row] = sumRe;
    xIm[row] = sumIm;
  }
}
