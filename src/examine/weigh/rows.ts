import type { Contribution } from "./evidence.ts";

/**
 * Residuals and their slopes, both over the errors, as what they add to a fit.
 * @param rows of each unknown in turn, as long as the residuals
 */
export function contributionOf(
  residual: Float64Array,
  rows: Float64Array,
  unknowns: readonly number[],
  degrees: number,
): Contribution {
  const [count, size] = [residual.length, unknowns.length];
  const right = new Float64Array(size);
  const curvature = new Float64Array(size * size);
  let squares = 0;
  for (const each of residual) squares += each * each;
  for (let k = 0; k < size; k++) {
    const at = k * count;
    let sum = 0;
    for (let i = 0; i < count; i++) sum += rows[at + i]! * residual[i]!;
    right[k] = sum;
    for (let j = 0; j <= k; j++) {
      const other = j * count;
      let product = 0;
      for (let i = 0; i < count; i++) product += rows[at + i]! * rows[other + i]!;
      curvature[k * size + j] = product;
      curvature[j * size + k] = product;
    }
  }
  return { squares, extra: 0, unknowns, right, curvature, degrees };
}
