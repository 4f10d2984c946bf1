/** Adds an admittance between two unknowns to a matrix of nodal analysis, row-major; −1 is a reference, at 0 V. */
export function stampAdmittance(matrix: Float64Array, size: number, a: number, b: number, value: number): void {
  if (a >= 0) matrix[a * size + a]! += value;
  if (b >= 0) matrix[b * size + b]! += value;
  if (a >= 0 && b >= 0) {
    matrix[a * size + b]! -= value;
    matrix[b * size + a]! -= value;
  }
}
