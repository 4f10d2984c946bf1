import { symmetricEigen } from "./symmetric-eigen.ts";

/** Residuals, each divided by its standard deviation, for a list of parameters. */
export type Residuals = (parameters: Float64Array) => Float64Array;

export interface Solution {
  readonly parameters: Float64Array;
  readonly residuals: Float64Array;
  readonly chiSquare: number;
  /** (JᵀJ)⁻¹ in row-major order: the parameters' covariance where the residuals have unit variance. Null where JᵀJ is singular. */
  readonly covariance: Float64Array | null;
  /** Of the Jacobian with its columns brought to length 1. */
  readonly condition: number;
}

const MAX_ITERATIONS = 100;
const STEP = 1e-5;
/** Relative gain in χ² below which nothing is gained any more. */
const CONVERGED = 1e-10;
const LARGEST_DAMPING = 1e8;
/** Eigenvalues of the normalised JᵀJ this much under the largest are rounding, as the Jacobian is good to about 1e-9. */
const SINGULAR = 1e-14;
/** Parameters are logarithms: a longer step than a factor of e would leave the region the Jacobian describes. */
const LONGEST_STEP = 1;

function sumOfSquares(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return Number.isFinite(sum) ? sum : Number.POSITIVE_INFINITY;
}

/** Columns of the Jacobian by central differences. */
function jacobian(residuals: Residuals, parameters: Float64Array): Float64Array[] {
  return Array.from(parameters, (value, index) => {
    const moved = Float64Array.from(parameters);
    moved[index] = value + STEP;
    const above = residuals(moved);
    moved[index] = value - STEP;
    const below = residuals(moved);
    return above.map((high, i) => (high - below[i]!) / (2 * STEP));
  });
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

interface Normal {
  readonly size: number;
  readonly values: Float64Array;
  readonly vectors: Float64Array;
  readonly scale: readonly number[];
  readonly gradient: readonly number[];
}

/** JᵀJ with columns scaled to length 1, taken apart into eigenvectors, so that any damping can be tried at little cost. */
function normalEquations(columns: readonly Float64Array[], residuals: Float64Array): Normal {
  const size = columns.length;
  const scale = columns.map((column) => Math.sqrt(dot(column, column)) || 1);
  const matrix = new Float64Array(size * size);
  for (const [i, a] of columns.entries())
    for (const [j, b] of columns.entries()) matrix[i * size + j] = dot(a, b) / (scale[i]! * scale[j]!);
  const gradient = columns.map((column, i) => dot(column, residuals) / scale[i]!);
  return { size, ...symmetricEigen(matrix, size), scale, gradient };
}

/** −(JᵀJ + λ·diag)⁻¹Jᵀr, shortened to the longest step. */
function dampedStep({ size, values, vectors, scale, gradient }: Normal, damping: number): Float64Array {
  const step = new Float64Array(size);
  for (let k = 0; k < size; k++) {
    let along = 0;
    for (let i = 0; i < size; i++) along += vectors[i * size + k]! * gradient[i]!;
    const length = -along / (Math.max(0, values[k]!) + damping);
    for (let i = 0; i < size; i++) step[i]! += (length * vectors[i * size + k]!) / scale[i]!;
  }
  const longest = step.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return longest > LONGEST_STEP ? step.map((value) => (value * LONGEST_STEP) / longest) : step;
}

function covarianceOf({ size, values, vectors, scale }: Normal): {
  covariance: Float64Array | null;
  condition: number;
} {
  const largest = values.reduce((most, value) => Math.max(most, value), 0);
  const least = values.reduce((low, value) => Math.min(low, value), Number.POSITIVE_INFINITY);
  if (!(least > SINGULAR * largest)) return { covariance: null, condition: 1 / Math.sqrt(SINGULAR) };
  const covariance = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) {
      let sum = 0;
      for (let k = 0; k < size; k++) sum += (vectors[i * size + k]! * vectors[j * size + k]!) / values[k]!;
      covariance[i * size + j] = sum / (scale[i]! * scale[j]!);
    }
  }
  return { covariance, condition: Math.sqrt(largest / least) };
}

/**
 * Weighted least squares by Levenberg's and Marquardt's damping (D. W. Marquardt, J. SIAM 11, 431, 1963) over parameters that
 * are logarithms or of size about 1.
 */
export function leastSquares(residuals: Residuals, start: Float64Array, maxIterations = MAX_ITERATIONS): Solution {
  let parameters = Float64Array.from(start);
  let current = residuals(parameters);
  let chiSquare = sumOfSquares(current);
  let damping = 1e-3;
  let normal = normalEquations(jacobian(residuals, parameters), current);
  for (let iteration = 0; iteration < maxIterations && damping < LARGEST_DAMPING; iteration++) {
    const step = dampedStep(normal, damping);
    const tried = parameters.map((value, i) => value + step[i]!);
    const next = residuals(tried);
    const gained = chiSquare - sumOfSquares(next);
    if (!(gained >= 0)) {
      damping *= 8;
      continue;
    }
    const done = gained <= CONVERGED * chiSquare;
    parameters = tried;
    current = next;
    chiSquare -= gained;
    damping = Math.max(1e-12, damping / 8);
    normal = normalEquations(jacobian(residuals, parameters), current);
    if (done) break;
  }
  return { parameters, residuals: current, chiSquare, ...covarianceOf(normal) };
}
