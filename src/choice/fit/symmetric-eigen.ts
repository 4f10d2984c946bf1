const SWEEPS = 50;
/** Off-diagonal rest, beside the diagonal, below which rotations only stir up rounding. */
const NEGLIGIBLE = 1e-17;

function rotate(matrix: Float64Array, vectors: Float64Array, size: number, p: number, q: number): void {
  const apq = matrix[p * size + q]!;
  if (apq === 0) return;
  const theta = (matrix[q * size + q]! - matrix[p * size + p]!) / (2 * apq);
  const t = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.hypot(theta, 1));
  const c = 1 / Math.hypot(t, 1);
  const s = t * c;
  for (let k = 0; k < size; k++) {
    const [kp, kq] = [matrix[k * size + p]!, matrix[k * size + q]!];
    matrix[k * size + p] = c * kp - s * kq;
    matrix[k * size + q] = s * kp + c * kq;
  }
  for (let k = 0; k < size; k++) {
    const [pk, qk] = [matrix[p * size + k]!, matrix[q * size + k]!];
    matrix[p * size + k] = c * pk - s * qk;
    matrix[q * size + k] = s * pk + c * qk;
    const [vp, vq] = [vectors[k * size + p]!, vectors[k * size + q]!];
    vectors[k * size + p] = c * vp - s * vq;
    vectors[k * size + q] = s * vp + c * vq;
  }
}

/**
 * Eigenvalues and eigenvectors of a small symmetric matrix (row-major) by cyclic Jacobi rotations (Golub and Van Loan, Matrix
 * Computations, section 8.5; from memory). Column k of `vectors` belongs to `values[k]`.
 */
export function symmetricEigen(symmetric: Float64Array, size: number): { values: Float64Array; vectors: Float64Array } {
  const matrix = Float64Array.from(symmetric);
  const vectors = new Float64Array(size * size);
  for (let i = 0; i < size; i++) vectors[i * size + i] = 1;
  const trace = Array.from({ length: size }, (_, i) => Math.abs(matrix[i * size + i]!)).reduce((sum, x) => sum + x, 0);
  const offDiagonal = () => {
    let sum = 0;
    for (let p = 0; p < size; p++) for (let q = p + 1; q < size; q++) sum += Math.abs(matrix[p * size + q]!);
    return sum;
  };
  for (let sweep = 0; sweep < SWEEPS && offDiagonal() > NEGLIGIBLE * trace; sweep++)
    for (let p = 0; p < size; p++) for (let q = p + 1; q < size; q++) rotate(matrix, vectors, size, p, q);
  return { values: Float64Array.from({ length: size }, (_, i) => matrix[i * size + i]!), vectors };
}
