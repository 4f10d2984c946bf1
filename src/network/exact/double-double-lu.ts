import { productError, sumError } from "./double-double.ts";

/** A complex number with some 32 digits in each part. */
interface Wide {
  reHigh: number;
  reLow: number;
  imHigh: number;
  imLow: number;
}

/** Complex values of some 32 digits. */
export class WideArray {
  readonly reHigh: Float64Array;
  readonly reLow: Float64Array;
  readonly imHigh: Float64Array;
  readonly imLow: Float64Array;

  constructor(length: number) {
    this.reHigh = new Float64Array(length);
    this.reLow = new Float64Array(length);
    this.imHigh = new Float64Array(length);
    this.imLow = new Float64Array(length);
  }

  fill(value: number): void {
    this.reHigh.fill(value);
    this.reLow.fill(0);
    this.imHigh.fill(0);
    this.imLow.fill(0);
  }

  swap(i: number, j: number): void {
    for (const part of [this.reHigh, this.reLow, this.imHigh, this.imLow]) [part[i], part[j]] = [part[j]!, part[i]!];
  }

  magnitude(at: number): number {
    return Math.abs(this.reHigh[at]!) + Math.abs(this.imHigh[at]!);
  }

  /** this[at] −= f · from[other] */
  subtractProduct(at: number, f: Wide, from: WideArray, other: number): void {
    const [a, b] = [from.reHigh[other]!, from.imHigh[other]!];
    if (a === 0 && b === 0) return;
    const [aLow, bLow] = [from.reLow[other]!, from.imLow[other]!];
    this.#add(this.reHigh, this.reLow, at, -f.reHigh, -f.reLow, a, aLow);
    this.#add(this.reHigh, this.reLow, at, f.imHigh, f.imLow, b, bLow);
    this.#add(this.imHigh, this.imLow, at, -f.reHigh, -f.reLow, b, bLow);
    this.#add(this.imHigh, this.imLow, at, -f.imHigh, -f.imLow, a, aLow);
  }

  /** high/low[at] += x · y */
  #add(high: Float64Array, low: Float64Array, at: number, x: number, xLow: number, y: number, yLow: number): void {
    const product = x * y;
    const lost = productError(x, y, product) + x * yLow + xLow * y;
    const old = high[at]!;
    const sum = old + product;
    const rest = sumError(old, product, sum) + low[at]! + lost;
    const total = sum + rest;
    high[at] = total;
    low[at] = rest - (total - sum);
  }
}

const NOTHING: Wide = { reHigh: 0, reLow: 0, imHigh: 0, imLow: 0 };

/** 1 / value, by two steps of Newton's from the double quotient. */
function reciprocal(of: WideArray, at: number): Wide {
  const [a, b] = [of.reHigh[at]!, of.imHigh[at]!];
  const scale = Math.max(Math.abs(a), Math.abs(b));
  const [p, q] = [a / scale, b / scale];
  const norm = (p * p + q * q) * scale;
  let guess: Wide = { ...NOTHING, reHigh: p / norm, imHigh: -q / norm };
  for (let step = 0; step < 2; step++) guess = sum(guess, times(guess, oneMinus(times(guess, valueAt(of, at)))));
  return guess;
}

function valueAt(of: WideArray, at: number): Wide {
  return { reHigh: of.reHigh[at]!, reLow: of.reLow[at]!, imHigh: of.imHigh[at]!, imLow: of.imLow[at]! };
}

const [register, operand] = [new WideArray(1), new WideArray(1)];

function put(into: WideArray, { reHigh, reLow, imHigh, imLow }: Wide, at = 0): void {
  into.reHigh[at] = reHigh;
  into.reLow[at] = reLow;
  into.imHigh[at] = imHigh;
  into.imLow[at] = imLow;
}

const negative = ({ reHigh, reLow, imHigh, imLow }: Wide): Wide => ({
  reHigh: -reHigh,
  reLow: -reLow,
  imHigh: -imHigh,
  imLow: -imLow,
});

/** start − a·b */
function minusProduct(start: Wide, a: Wide, b: Wide): Wide {
  put(register, start);
  put(operand, b);
  register.subtractProduct(0, a, operand, 0);
  return valueAt(register, 0);
}

const ONE: Wide = { ...NOTHING, reHigh: 1 };
const times = (a: Wide, b: Wide): Wide => minusProduct(NOTHING, negative(a), b);
const sum = (a: Wide, b: Wide): Wide => minusProduct(a, negative(b), ONE);
const oneMinus = (a: Wide): Wide => minusProduct(ONE, a, ONE);

/** LU factorisation as `ComplexLu`'s, with some 32 digits: for the few networks whose equations leave a double none. */
export class DoubleDoubleLu {
  readonly size: number;
  /** Set this to the matrix, row-major, before `factor`. */
  readonly matrix: WideArray;
  readonly #swappedWith: Int32Array;
  readonly #inverses: Wide[] = [];

  constructor(size: number) {
    this.size = size;
    this.matrix = new WideArray(size * size);
    this.#swappedWith = new Int32Array(size);
  }

  /** @returns false where the matrix is singular */
  factor(): boolean {
    const { size, matrix } = this;
    for (let k = 0; k < size; k++) {
      let best = k;
      for (let row = k + 1; row < size; row++)
        if (matrix.magnitude(row * size + k) > matrix.magnitude(best * size + k)) best = row;
      const pivot = matrix.magnitude(best * size + k);
      if (!(pivot > 0 && Number.isFinite(pivot))) return false;
      this.#swappedWith[k] = best;
      if (best !== k)
        for (let column = 0; column < size; column++) matrix.swap(k * size + column, best * size + column);
      this.#inverses[k] = reciprocal(matrix, k * size + k);
      this.#eliminate(k);
    }
    return true;
  }

  #eliminate(k: number): void {
    const { size, matrix } = this;
    for (let row = k + 1; row < size; row++) {
      const at = row * size + k;
      if (matrix.magnitude(at) === 0) continue;
      const factor = times(valueAt(matrix, at), this.#inverses[k]!);
      put(matrix, factor, at);
      for (let column = k + 1; column < size; column++)
        matrix.subtractProduct(row * size + column, factor, matrix, k * size + column);
    }
  }

  /** Solves in place. */
  solve(x: WideArray): void {
    const { size, matrix } = this;
    for (let k = 0; k < size; k++) if (this.#swappedWith[k] !== k) x.swap(k, this.#swappedWith[k]!);
    for (let row = 1; row < size; row++)
      for (let k = 0; k < row; k++) x.subtractProduct(row, valueAt(matrix, row * size + k), x, k);
    for (let row = size - 1; row >= 0; row--) {
      for (let k = row + 1; k < size; k++) x.subtractProduct(row, valueAt(matrix, row * size + k), x, k);
      put(x, times(valueAt(x, row), this.#inverses[row]!), row);
    }
  }
}
