import { CAPACITOR, type PortElements, RESISTOR } from "./port-elements.ts";
import { SHELF_CORNERS } from "./slots.ts";

/** Admittances of all elements at one frequency; of two coupled branches, those of their inverse, and what is between them. */
export class PortAdmittances {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly crossRe: Float64Array;
  readonly crossIm: Float64Array;
  readonly #elements: PortElements;
  readonly #zRe: Float64Array;
  readonly #zIm: Float64Array;

  constructor(elements: PortElements) {
    this.#elements = elements;
    const { count, mutuals } = elements;
    this.re = new Float64Array(count);
    this.im = new Float64Array(count);
    this.#zRe = new Float64Array(count);
    this.#zIm = new Float64Array(count);
    this.crossRe = new Float64Array(mutuals.length);
    this.crossIm = new Float64Array(mutuals.length);
  }

  fill(omega: number, values: ArrayLike<number>): void {
    const { count, kind, slot, source } = this.#elements;
    for (let index = 0; index < count; index++) {
      const at = slot[index]!;
      if (kind[index] === RESISTOR) {
        this.re[index] = 1 / values[at]!;
        this.im[index] = 0;
      } else if (kind[index] === CAPACITOR) {
        this.re[index] = 0;
        this.im[index] = omega * values[at]!;
      } else {
        this.#fillBranch(index, omega, values, at, source[index]! >= 0);
      }
    }
    this.#couple(omega, values);
  }

  #fillBranch(index: number, omega: number, values: ArrayLike<number>, at: number, hasShelves: boolean): void {
    let zRe = values[at]!;
    let zIm = omega * values[at + 1]!;
    if (hasShelves)
      for (let shelf = 0; shelf < SHELF_CORNERS.length; shelf++) {
        const x = omega / SHELF_CORNERS[shelf]!;
        const fall = (omega * values[at + 2 + shelf]!) / (1 + x * x);
        zRe += fall * x;
        zIm += fall;
      }
    this.#zRe[index] = zRe;
    this.#zIm[index] = zIm;
    const norm = zRe * zRe + zIm * zIm;
    this.re[index] = zRe / norm;
    this.im[index] = -zIm / norm;
  }

  /** The inverse of [[z₁, jωM], [jωM, z₂]]. */
  #couple(omega: number, values: ArrayLike<number>): void {
    for (const [index, { first, second, slot }] of this.#elements.mutuals.entries()) {
      const aRe = this.#zRe[first]!;
      const aIm = this.#zIm[first]!;
      const bRe = this.#zRe[second]!;
      const bIm = this.#zIm[second]!;
      const m = omega * values[slot]!;
      const dRe = aRe * bRe - aIm * bIm + m * m;
      const dIm = aRe * bIm + aIm * bRe;
      const norm = dRe * dRe + dIm * dIm;
      this.re[first] = (bRe * dRe + bIm * dIm) / norm;
      this.im[first] = (bIm * dRe - bRe * dIm) / norm;
      this.re[second] = (aRe * dRe + aIm * dIm) / norm;
      this.im[second] = (aIm * dRe - aRe * dIm) / norm;
      this.crossRe[index] = (-m * dIm) / norm;
      this.crossIm[index] = (-m * dRe) / norm;
    }
  }
}
