import { sumError } from "./exact/double-double.ts";

/** Adds an admittance between two unknowns to a matrix of nodal analysis, row-major; −1 is a reference, at 0 V. */
export function stampAdmittance(matrix: Float64Array, size: number, a: number, b: number, value: number): void {
  if (a >= 0) matrix[a * size + a]! += value;
  if (b >= 0) matrix[b * size + b]! += value;
  if (a >= 0 && b >= 0) {
    matrix[a * size + b]! -= value;
    matrix[b * size + a]! -= value;
  }
}

/** A matrix with what its entries' sums lose, so that small admittances beside large ones keep their digits. */
export interface StampedMatrix {
  readonly high: Float64Array;
  readonly low: Float64Array;
}

function add({ high, low }: StampedMatrix, at: number, value: number, rest: number): void {
  const old = high[at]!;
  const sum = old + value;
  low[at]! += sumError(old, value, sum) + rest;
  high[at] = sum;
}

/** As `stampAdmittance`, for a value and what its own rounding lost. */
export function stampExactly(
  matrix: StampedMatrix,
  size: number,
  a: number,
  b: number,
  value: number,
  rest: number,
): void {
  if (a >= 0) add(matrix, a * size + a, value, rest);
  if (b >= 0) add(matrix, b * size + b, value, rest);
  if (a >= 0 && b >= 0) {
    add(matrix, a * size + b, -value, -rest);
    add(matrix, b * size + a, -value, -rest);
  }
}
