import { solveCholesky } from "../../bench/faults/likelihood/cholesky.ts";
import type { Contribution } from "./evidence.ts";

/** A fit made linear about a point. */
export interface LinearFit {
  /** ln of the evidence with all unknowns integrated out, but for what is the same for every guard. */
  readonly log: number;
  /** At the best place of the unknowns, their own distances from nominal included. */
  readonly chiSquare: number;
  /** At the point itself. */
  readonly objective: number;
  /** What of both no Gaussian law says. */
  readonly extra: number;
  readonly degrees: number;
  /** The best place. */
  readonly best: Float64Array;
  /** Lower Cholesky factor of the curvature there, row by row. */
  readonly factor: Float64Array;
}

/**
 * Gauss and Newton's step with normal unknowns, and Laplace's evidence for it.
 * @param at where the contributions were made
 * @param deviations of the unknowns' own laws
 * @param damping lengthens the curvature's diagonal by that share of it (D. W. Marquardt, 1963); 0 for the evidence
 */
export function linearFit(
  contributions: readonly Contribution[],
  at: Float64Array,
  deviations: Float64Array,
  damping = 0,
): LinearFit {
  const size = at.length;
  const matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  let [squares, extra, degrees, logPrior] = [0, 0, 0, 0];
  for (let k = 0; k < size; k++) {
    const weight = 1 / deviations[k]! ** 2;
    matrix[k * size + k] = weight;
    right[k] = -weight * at[k]!;
    squares += weight * at[k]! ** 2;
    logPrior += 2 * Math.log(deviations[k]!);
  }
  for (const each of contributions) {
    squares += each.squares;
    extra += each.extra;
    degrees += each.degrees;
    const own = each.unknowns.length;
    for (let k = 0; k < own; k++) {
      const row = each.unknowns[k]!;
      right[row]! += each.right[k]!;
      for (let j = 0; j < own; j++) {
        const column = each.unknowns[j]!;
        if (column <= row) matrix[row * size + column]! += each.curvature[k * own + j]!;
      }
    }
  }
  for (let k = 0; k < size; k++) matrix[k * size + k]! *= 1 + damping;
  const step = new Float64Array(size);
  const { logDeterminant, explained } = solveCholesky(matrix, right, size, step);
  const best = at.map((value, k) => value + step[k]!);
  return {
    log: -0.5 * (squares - explained + logDeterminant + logPrior),
    chiSquare: squares - explained - extra,
    objective: squares,
    extra,
    degrees,
    best,
    factor: matrix,
  };
}
