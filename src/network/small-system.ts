import { ComplexLu } from "./complex-lu.ts";
import type { Samples } from "./samples.ts";

/** Pivots of I + δW stand near 1; a smaller one has lost its digits to cancellation, as where ideal joints form a loop. */
const MIN_PIVOT = 1e-7;

/**
 * Woodbury's identity for changed variable resistors: (I + δW) u = δ·y at one sampled frequency, and what follows from u.
 */
export class SmallSystem {
  detRe = 1;
  detIm = 0;
  re = 0;
  im = 0;
  readonly #k: number;
  readonly #live: number;
  readonly #lu: ComplexLu;
  readonly #uRe: Float64Array;
  readonly #uIm: Float64Array;

  constructor(variableCount: number, liveCount: number) {
    this.#k = variableCount;
    this.#live = liveCount;
    this.#lu = new ComplexLu(variableCount);
    this.#uRe = new Float64Array(variableCount);
    this.#uIm = new Float64Array(variableCount);
  }

  /**
   * Solves at point m for the change δ of the variable resistors and leaves the network's determinant in `detRe`, `detIm`.
   * @returns false where the changed network is singular or nearly so there
   */
  solve(samples: Samples, m: number, change: Float64Array): boolean {
    const k = this.#k;
    const { re, im } = this.#lu;
    const coupling = m * k * k;
    for (let i = 0; i < k; i++) {
      const delta = change[i]!;
      for (let j = 0; j < k; j++) {
        const at = i * k + j;
        re[at] = delta * samples.couplingRe[coupling + at]! + (i === j ? 1 : 0);
        im[at] = delta * samples.couplingIm[coupling + at]!;
      }
      this.#uRe[i] = delta * samples.currentRe[m * k + i]!;
      this.#uIm[i] = delta * samples.currentIm[m * k + i]!;
    }
    const lu = this.#lu;
    if (!lu.factor() || lu.smallestPivot < MIN_PIVOT) return false;
    if (k > 0) lu.solve(this.#uRe, this.#uIm);
    this.detRe = samples.detRe[m]! * lu.detRe - samples.detIm[m]! * lu.detIm;
    this.detIm = samples.detRe[m]! * lu.detIm + samples.detIm[m]! * lu.detRe;
    return true;
  }

  /** Leaves the transfer of live source `i` at point m in `re`, `im`. */
  transferOf(samples: Samples, m: number, i: number): void {
    const k = this.#k;
    const source = m * this.#live + i;
    let re = samples.sourceRe[source]!;
    let im = samples.sourceIm[source]!;
    for (let j = 0; j < k; j++) {
      const at = source * k + j;
      const uRe = this.#uRe[j]!;
      const uIm = this.#uIm[j]!;
      re -= samples.reachRe[at]! * uRe - samples.reachIm[at]! * uIm;
      im -= samples.reachRe[at]! * uIm + samples.reachIm[at]! * uRe;
    }
    this.re = re;
    this.im = im;
  }
}
