/**
 * Complex symmetric systems by L·D·Lᵀ without pivoting: admittances of passive elements need none, because the Hermitian part of
 * their matrix is positive (N. J. Higham, Factorizing complex symmetric matrices with positive definite real and imaginary
 * parts, Math. Comp. 67, 1998).
 */
export class ComplexLdl {
  readonly size: number;
  /** Lower half, row by row; overwritten by `factor`. */
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly #inverseRe: Float64Array;
  readonly #inverseIm: Float64Array;

  constructor(size: number) {
    this.size = size;
    this.re = new Float64Array(size * size);
    this.im = new Float64Array(size * size);
    this.#inverseRe = new Float64Array(size);
    this.#inverseIm = new Float64Array(size);
  }

  factor(): void {
    const { size: n, re, im } = this;
    for (let k = 0; k < n; k++) {
      const dRe = re[k * n + k]!;
      const dIm = im[k * n + k]!;
      const norm = dRe * dRe + dIm * dIm;
      const iRe = norm > 0 ? dRe / norm : 0;
      const iIm = norm > 0 ? -dIm / norm : 0;
      this.#inverseRe[k] = iRe;
      this.#inverseIm[k] = iIm;
      for (let row = k + 1; row < n; row++) {
        const aRe = re[row * n + k]!;
        const aIm = im[row * n + k]!;
        if (aRe === 0 && aIm === 0) continue;
        const lRe = aRe * iRe - aIm * iIm;
        const lIm = aRe * iIm + aIm * iRe;
        for (let column = k + 1; column <= row; column++) {
          const bRe = re[column * n + k]!;
          const bIm = im[column * n + k]!;
          re[row * n + column]! -= lRe * bRe - lIm * bIm;
          im[row * n + column]! -= lRe * bIm + lIm * bRe;
        }
      }
      // The column is read unscaled by every row above; only then it becomes L's.
      for (let row = k + 1; row < n; row++) {
        const aRe = re[row * n + k]!;
        const aIm = im[row * n + k]!;
        re[row * n + k] = aRe * iRe - aIm * iIm;
        im[row * n + k] = aRe * iIm + aIm * iRe;
      }
    }
  }

  /** Solves in place. */
  solve(xRe: Float64Array, xIm: Float64Array): void {
    const { size: n, re, im } = this;
    for (let row = 1; row < n; row++)
      for (let k = 0; k < row; k++) {
        const lRe = re[row * n + k]!;
        const lIm = im[row * n + k]!;
        xRe[row]! -= lRe * xRe[k]! - lIm * xIm[k]!;
        xIm[row]! -= lRe * xIm[k]! + lIm * xRe[k]!;
      }
    for (let row = 0; row < n; row++) {
      const a = xRe[row]!;
      const b = xIm[row]!;
      xRe[row] = a * this.#inverseRe[row]! - b * this.#inverseIm[row]!;
      xIm[row] = a * this.#inverseIm[row]! + b * this.#inverseRe[row]!;
    }
    for (let row = n - 2; row >= 0; row--)
      for (let k = row + 1; k < n; k++) {
        const lRe = re[k * n + row]!;
        const lIm = im[k * n + row]!;
        xRe[row]! -= lRe * xRe[k]! - lIm * xIm[k]!;
        xIm[row]! -= lRe * xIm[k]! + lIm * xRe[k]!;
      }
  }
}
