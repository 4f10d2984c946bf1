/** A system G + s·C, row-major. */
interface Matrices {
  readonly size: number;
  readonly g: Float64Array;
  readonly c: Float64Array;
}

/** Those unknowns that meet the fewest others first, so that elimination fills in little; where a network meets in a point, it comes last. */
export function byDegree({ size, g, c }: Matrices, unknowns: readonly number[]): number[] {
  const degree = new Int32Array(size);
  for (const row of unknowns)
    for (let at = row * size; at < (row + 1) * size; at++) if (g[at] !== 0 || c[at] !== 0) degree[row]!++;
  return unknowns.toSorted((a, b) => degree[a]! - degree[b]!);
}

/** The rows and columns of a matrix that `order` names, in that order. */
export function picked(matrix: Float64Array, size: number, order: readonly number[]): Float64Array {
  const values = new Float64Array(order.length * order.length);
  let at = 0;
  for (const row of order) for (const column of order) values[at++] = matrix[row * size + column]!;
  return values;
}
