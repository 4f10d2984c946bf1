export interface CholeskySolution {
  /** ln det A. */
  readonly logDeterminant: number;
  /** bᵀA⁻¹b. */
  readonly explained: number;
}

/**
 * Solves A x = b by Cholesky's factoring.
 * @param matrix A, symmetric and positive definite, given in its lower half, row by row; overwritten
 * @param x filled with the solution
 */
export function solveCholesky(
  matrix: Float64Array,
  right: Float64Array,
  size: number,
  x: Float64Array,
): CholeskySolution {
  let logDeterminant = 0;
  let explained = 0;
  for (let row = 0; row < size; row++) {
    for (let column = 0; column <= row; column++) {
      let sum = matrix[row * size + column]!;
      for (let k = 0; k < column; k++) sum -= matrix[row * size + k]! * matrix[column * size + k]!;
      matrix[row * size + column] = column === row ? Math.sqrt(sum) : sum / matrix[column * size + column]!;
    }
    const diagonal = matrix[row * size + row]!;
    logDeterminant += 2 * Math.log(diagonal);
    let sum = right[row]!;
    for (let k = 0; k < row; k++) sum -= matrix[row * size + k]! * x[k]!;
    x[row] = sum / diagonal;
    explained += x[row]! * x[row]!;
  }
  for (let row = size - 1; row >= 0; row--) {
    let sum = x[row]!;
    for (let k = row + 1; k < size; k++) sum -= matrix[k * size + row]! * x[k]!;
    x[row] = sum / matrix[row * size + row]!;
  }
  return { logDeterminant, explained };
}
