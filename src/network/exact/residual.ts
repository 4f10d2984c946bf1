import type { Pencil } from "../pencil.ts";
import { productError, sumError } from "./double-double.ts";
import type { WideArray } from "./double-double-lu.ts";

interface ComplexVector {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** What a solution leaves of a pencil's equations, summed with twice the digits over the entries that are not 0. */
export class Residual {
  readonly #size: number;
  readonly #rowStarts: Int32Array;
  readonly #columns: Int32Array;
  readonly #g: Float64Array;
  readonly #gLow: Float64Array;
  readonly #c: Float64Array;
  readonly #cLow: Float64Array;
  readonly #result: ComplexVector;
  #high = 0;
  #low = 0;

  /** @param order in which the unknowns stand */
  constructor(pencil: Pencil, order: readonly number[]) {
    const { size, g, gLow, c, cLow } = pencil;
    this.#size = size;
    this.#rowStarts = new Int32Array(size + 1);
    const columns: number[] = [];
    const places: number[] = [];
    for (const [place, row] of order.entries()) {
      for (const [column, other] of order.entries()) {
        const at = row * size + other;
        if (g[at] === 0 && c[at] === 0 && gLow[at] === 0 && cLow[at] === 0) continue;
        columns.push(column);
        places.push(at);
      }
      this.#rowStarts[place + 1] = columns.length;
    }
    this.#columns = Int32Array.from(columns);
    const entries = (matrix: Float64Array) => Float64Array.from(places, (at) => matrix[at]!);
    [this.#g, this.#gLow, this.#c, this.#cLow] = [entries(g), entries(gLow), entries(c), entries(cLow)];
    this.#result = { re: new Float64Array(size), im: new Float64Array(size) };
  }

  /**
   * A unit at `place`, less A(jω)·x.
   * @returns memory of this object's own, overwritten by the next call
   */
  of(omega: number, place: number, xRe: Float64Array, xIm: Float64Array): ComplexVector {
    for (let row = 0; row < this.#size; row++) {
      this.#result.re[row] = this.#rowOf(row, row === place ? 1 : 0, omega, xRe, xIm, -1);
      this.#result.im[row] = this.#rowOf(row, 0, omega, xIm, xRe, 1);
    }
    return this.#result;
  }

  /** start − Σ (g·x − sign·ω·c·y) is the real part with sign −1 … */
  #rowOf(row: number, start: number, omega: number, x: Float64Array, y: Float64Array, sign: number): number {
    this.#high = start;
    this.#low = 0;
    for (let at = this.#rowStarts[row]!; at < this.#rowStarts[row + 1]!; at++) {
      const column = this.#columns[at]!;
      const g = this.#g[at]!;
      if (g !== 0) this.#subtract(g, this.#gLow[at]!, x[column]!);
      const c = this.#c[at]!;
      if (c === 0) continue;
      const reactance = omega * c;
      const lost = productError(omega, c, reactance) + omega * this.#cLow[at]!;
      this.#subtract(sign * reactance, sign * lost, y[column]!);
    }
    return this.#high + this.#low;
  }

  #subtract(high: number, low: number, x: number): void {
    const product = high * x;
    const sum = this.#high - product;
    this.#low += sumError(this.#high, -product, sum) - productError(high, x, product) - low * x;
    this.#high = sum;
  }

  /** The whole of A(jω), row-major. */
  fill(matrix: WideArray, omega: number): void {
    matrix.fill(0);
    for (let row = 0; row < this.#size; row++)
      for (let at = this.#rowStarts[row]!; at < this.#rowStarts[row + 1]!; at++) {
        const place = row * this.#size + this.#columns[at]!;
        const c = this.#c[at]!;
        matrix.reHigh[place] = this.#g[at]!;
        matrix.reLow[place] = this.#gLow[at]!;
        matrix.imHigh[place] = omega * c;
        matrix.imLow[place] = productError(omega, c, omega * c) + omega * this.#cLow[at]!;
      }
  }
}
