import { ComplexLu } from "../complex-lu.ts";
import { byDegree, picked } from "../elimination-order.ts";
import type { Pencil } from "../pencil.ts";
import { DoubleDoubleLu, WideArray } from "./double-double-lu.ts";
import { Residual } from "./residual.ts";

/** A correction so small beside what is sought leaves an error of its own square. */
const SMALL_CORRECTION = 1e-8;
/** Of a transfer, V/V: −300 dB. */
const NOTHING = 1e-15;
/** Each gains several digits, or none will. */
const MOST_CORRECTIONS = 4;

/**
 * Solves a pencil at one frequency after the other, each solution corrected by what it leaves of the exact equations (iterative
 * refinement with residuals of twice the digits: J. Demmel et al., Error bounds from extra-precise iterative refinement, ACM
 * TOMS 32, 2006). Where that gains nothing, as with resistors of micro- and teraohms side by side, elimination itself has twice
 * the digits.
 */
export class ExactSolver {
  readonly #pencil: Pencil;
  readonly #order: readonly number[];
  readonly #placeOf: Int32Array;
  readonly #g: Float64Array;
  readonly #c: Float64Array;
  readonly #lu: ComplexLu;
  readonly #residual: Residual;
  readonly #wanted: readonly number[];
  readonly #xRe: Float64Array;
  readonly #xIm: Float64Array;
  readonly #slopeRe: Float64Array;
  readonly #slopeIm: Float64Array;
  #isFactored = false;

  /** @param wanted unknowns whose values are sought */
  constructor(pencil: Pencil, wanted: readonly number[]) {
    const { size } = pencil;
    this.#pencil = pencil;
    this.#order = byDegree(
      pencil,
      Array.from({ length: size }, (_, row) => row),
    );
    this.#placeOf = new Int32Array(size);
    for (const [place, row] of this.#order.entries()) this.#placeOf[row] = place;
    this.#g = picked(pencil.g, size, this.#order);
    this.#c = picked(pencil.c, size, this.#order);
    this.#lu = new ComplexLu(size);
    this.#residual = new Residual(pencil, this.#order);
    this.#wanted = wanted.map((row) => this.#placeOf[row]!);
    this.#xRe = new Float64Array(size);
    this.#xIm = new Float64Array(size);
    this.#slopeRe = new Float64Array(size);
    this.#slopeIm = new Float64Array(size);
  }

  /** Real and imaginary part of an unknown, as last solved. */
  re(row: number): number {
    return this.#xRe[this.#placeOf[row]!]!;
  }

  im(row: number): number {
    return this.#xIm[this.#placeOf[row]!]!;
  }

  /** d/d ln ω of an unknown, once `differentiate` said so. */
  slopeRe(row: number): number {
    return this.#slopeRe[this.#placeOf[row]!]!;
  }

  slopeIm(row: number): number {
    return this.#slopeIm[this.#placeOf[row]!]!;
  }

  /**
   * The slopes of the solution last found, from A·dx = −dA·x.
   * @returns false where the equations leave a double no digits
   */
  differentiate(omega: number): boolean {
    if (!this.#isFactored) return false;
    const { size } = this.#pencil;
    for (let row = 0; row < size; row++) {
      let [re, im] = [0, 0];
      for (let column = 0; column < size; column++) {
        const c = this.#c[row * size + column]!;
        re += c * this.#xRe[column]!;
        im += c * this.#xIm[column]!;
      }
      this.#slopeRe[row] = omega * im;
      this.#slopeIm[row] = -omega * re;
    }
    this.#lu.solve(this.#slopeRe, this.#slopeIm);
    return true;
  }

  /**
   * The solution for a unit excitation of one unknown.
   * @param omega rad/s
   * @returns false where the equations have no one solution
   */
  solve(omega: number, excited: number): boolean {
    const place = this.#placeOf[excited]!;
    this.#isFactored = this.#solveByRefinement(omega, place);
    return this.#isFactored || this.#solveWithTwiceTheDigits(omega, place);
  }

  #solveByRefinement(omega: number, place: number): boolean {
    const lu = this.#lu;
    lu.re.set(this.#g);
    for (let at = 0; at < this.#c.length; at++) lu.im[at] = omega * this.#c[at]!;
    if (!lu.factor()) return false;
    const [xRe, xIm] = [this.#xRe, this.#xIm];
    xRe.fill(0);
    xIm.fill(0);
    xRe[place] = 1;
    lu.solve(xRe, xIm);
    for (let step = 0; step < MOST_CORRECTIONS; step++) {
      const { re, im } = this.#residual.of(omega, place, xRe, xIm);
      lu.solve(re, im);
      const isSmall = this.#wanted.every((at) => {
        const size = Math.abs(xRe[at]!) + Math.abs(xIm[at]!);
        return Math.abs(re[at]!) + Math.abs(im[at]!) <= SMALL_CORRECTION * size + NOTHING;
      });
      for (let at = 0; at < xRe.length; at++) {
        xRe[at]! += re[at]!;
        xIm[at]! += im[at]!;
      }
      if (isSmall) return true;
    }
    return false;
  }

  #solveWithTwiceTheDigits(omega: number, place: number): boolean {
    const lu = new DoubleDoubleLu(this.#pencil.size);
    this.#residual.fill(lu.matrix, omega);
    if (!lu.factor()) return false;
    const x = new WideArray(lu.size);
    x.reHigh[place] = 1;
    lu.solve(x);
    this.#xRe.set(x.reHigh);
    this.#xIm.set(x.imHigh);
    return x.reHigh.every(Number.isFinite) && x.imHigh.every(Number.isFinite);
  }
}
