/** Residuals for a list of unknowns. */
export type Residuals = (unknowns: Float64Array) => Float64Array;

export interface Box {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

export interface BoundedSolution {
  readonly unknowns: Float64Array;
  readonly cost: number;
  /** −1 or 1 where an unknown is held by its lower or upper bound and would go on, else 0. */
  readonly held: readonly (-1 | 0 | 1)[];
  /** Columns of the Jacobian there. */
  readonly jacobian: readonly Float64Array[];
}

const MAX_ITERATIONS = 200;
const STEP = 1e-6;
const SMALLEST_STEP = 1e-10;
const LARGEST_DAMPING = 1e10;
/** A bound is reached within rounding of the unknown, a logarithm of a gap. */
const AT_BOUND = 1e-12;

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

function columnsAt(residuals: Residuals, unknowns: Float64Array): Float64Array[] {
  return Array.from(unknowns, (value, index) => {
    const moved = Float64Array.from(unknowns);
    moved[index] = value + STEP;
    const above = residuals(moved);
    moved[index] = value - STEP;
    const below = residuals(moved);
    return above.map((high, i) => (high - below[i]!) / (2 * STEP));
  });
}

/** Solves a symmetric positive definite system by Cholesky; a row without a pivot gives 0. */
export function solvePositive(matrix: readonly Float64Array[], right: Float64Array): Float64Array {
  const size = right.length;
  const lower = matrix.map((row) => Float64Array.from(row));
  const solution = Float64Array.from(right);
  for (let j = 0; j < size; j++) {
    for (let k = 0; k < j; k++) for (let i = j; i < size; i++) lower[i]![j]! -= lower[i]![k]! * lower[j]![k]!;
    const pivot = Math.sqrt(Math.max(0, lower[j]![j]!));
    for (let i = j; i < size; i++) lower[i]![j]! = pivot > 0 ? lower[i]![j]! / pivot : 0;
  }
  const divided = (value: number, pivot: number) => (pivot > 0 ? value / pivot : 0);
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) solution[i]! -= lower[i]![k]! * solution[k]!;
    solution[i] = divided(solution[i]!, lower[i]![i]!);
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) solution[i]! -= lower[k]![i]! * solution[k]!;
    solution[i] = divided(solution[i]!, lower[i]![i]!);
  }
  return solution;
}

/** Which bound holds each unknown: it is there, and downhill lies beyond. */
function heldBy(unknowns: Float64Array, gradient: Float64Array, { low, high }: Box): (-1 | 0 | 1)[] {
  return Array.from(unknowns, (value, index) => {
    if (value <= low[index]! + AT_BOUND && gradient[index]! > 0) return -1;
    return value >= high[index]! - AT_BOUND && gradient[index]! < 0 ? 1 : 0;
  });
}

/** The damped step of the free unknowns, the held ones left alone, cut off at the box. */
function stepWithin(
  unknowns: Float64Array,
  columns: readonly Float64Array[],
  gradient: Float64Array,
  damping: number,
  box: Box,
): Float64Array {
  const free = heldBy(unknowns, gradient, box).flatMap((held, index) => (held === 0 ? [index] : []));
  const matrix = free.map((i) =>
    Float64Array.from(free, (j) => dot(columns[i]!, columns[j]!) * (i === j ? 1 + damping : 1)),
  );
  const step = solvePositive(
    matrix,
    Float64Array.from(free, (index) => -gradient[index]!),
  );
  const moved = Float64Array.from(unknowns);
  free.forEach((index, k) => {
    moved[index] = Math.min(box.high[index]!, Math.max(box.low[index]!, unknowns[index]! + step[k]!));
  });
  return moved;
}

const startWithin = (start: Float64Array, { low, high }: Box) =>
  start.map((value, index) => Math.min(high[index]!, Math.max(low[index]!, value)));

/**
 * Least squares inside a box, by Gauss's and Newton's steps with Marquardt's damping, projected onto the box and taken in the
 * unknowns that no bound holds (C. Kanzow, N. Yamashita and M. Fukushima, J. Comput. Appl. Math. 172, 375, 2004, from memory).
 * Unknowns of size about 1, such as logarithms.
 */
export function boundedLeastSquares(residuals: Residuals, start: Float64Array, box: Box): BoundedSolution {
  let unknowns: Float64Array = startWithin(start, box);
  let current = residuals(unknowns);
  let cost = dot(current, current);
  let columns = columnsAt(residuals, unknowns);
  let gradient = Float64Array.from(columns, (column) => dot(column, current));
  let damping = 1e-3;
  for (let iteration = 0; iteration < MAX_ITERATIONS && damping < LARGEST_DAMPING; iteration++) {
    const tried = stepWithin(unknowns, columns, gradient, damping, box);
    const next = residuals(tried);
    const nextCost = dot(next, next);
    if (!(nextCost <= cost)) {
      damping *= 8;
      continue;
    }
    const moved = tried.reduce((most, value, index) => Math.max(most, Math.abs(value - unknowns[index]!)), 0);
    [unknowns, current, cost] = [tried, next, nextCost];
    damping = Math.max(1e-12, damping / 8);
    columns = columnsAt(residuals, unknowns);
    gradient = Float64Array.from(columns, (column) => dot(column, current));
    if (moved < SMALLEST_STEP) break;
  }
  return { unknowns, cost, held: heldBy(unknowns, gradient, box), jacobian: columns };
}
