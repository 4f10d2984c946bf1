/** (L·Lᵀ)⁻¹, row by row, of a lower Cholesky factor. */
export function covarianceOf(factor: Float64Array, size: number): Float64Array {
  const inverse = new Float64Array(size * size);
  for (let column = 0; column < size; column++) {
    for (let row = column; row < size; row++) {
      let sum = row === column ? 1 : 0;
      for (let k = column; k < row; k++) sum -= factor[row * size + k]! * inverse[k * size + column]!;
      inverse[row * size + column] = sum / factor[row * size + row]!;
    }
  }
  const covariance = new Float64Array(size * size);
  for (let a = 0; a < size; a++)
    for (let b = 0; b <= a; b++) {
      let sum = 0;
      for (let k = a; k < size; k++) sum += inverse[k * size + a]! * inverse[k * size + b]!;
      covariance[a * size + b] = sum;
      covariance[b * size + a] = sum;
    }
  return covariance;
}
