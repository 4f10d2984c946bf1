import type { Network } from "./elements.ts";
import { quotientError } from "./exact/double-double.ts";
import { type ReducedNetwork, reduceNodes } from "./reduce-nodes.ts";
import { stampExactly } from "./stamp.ts";

/**
 * The matrix pencil A(s) = G + s·C of modified nodal analysis (C. W. Ho, A. E. Ruehli, P. A. Brennan, 1975): node voltages,
 * then branch currents. Both matrices are real and symmetric, so the network is reciprocal by construction.
 */
export interface Pencil {
  readonly size: number;
  readonly voltageCount: number;
  readonly g: Float64Array;
  readonly c: Float64Array;
  /** What rounding the entries of either lost. */
  readonly gLow: Float64Array;
  readonly cLow: Float64Array;
  /** Current unknown of each source's branch. */
  readonly sourceRow: Int32Array;
  /** Current unknown of each variable resistor, by parameter. */
  readonly parameterRow: ReadonlyMap<number, { row: number; ohms: number }>;
  readonly unknownOfNode: Int32Array;
}

/**
 * Impedances are divided by this and admittances multiplied, so that a guard's entries stand near 1 beside the ±1 of the
 * incidence; voltages are unchanged by it. A power of two rounds nothing.
 */
export const REFERENCE_OHMS = 2 ** 17;

function stampIncidence(matrix: Float64Array, size: number, node: number, row: number, sign: number): void {
  if (node < 0) return;
  matrix[node * size + row]! += sign;
  matrix[row * size + node]! += sign;
}

type FourMatrices = [Float64Array, Float64Array, Float64Array, Float64Array];

/** Assembles the pencil of a network. */
export function assemblePencil(network: Network): Pencil {
  const reduced: ReducedNetwork = reduceNodes(network);
  const { voltageCount, branches, variables } = reduced;
  const size = voltageCount + branches.length + variables.length;
  const [g, c, gLow, cLow] = Array.from({ length: 4 }, () => new Float64Array(size * size)) as FourMatrices;
  for (const { a, b, ohms } of reduced.conductors) {
    const siemens = REFERENCE_OHMS / ohms;
    stampExactly({ high: g, low: gLow }, size, a, b, siemens, quotientError(REFERENCE_OHMS, ohms, siemens));
  }
  for (const { a, b, farads } of reduced.capacitors)
    stampExactly({ high: c, low: cLow }, size, a, b, farads * REFERENCE_OHMS, 0);
  const sourceRow = new Int32Array(network.sourceCount).fill(-1);
  for (const [index, { a, b, branch }] of branches.entries()) {
    const row = voltageCount + index;
    stampIncidence(g, size, a, row, 1);
    stampIncidence(g, size, b, row, -1);
    g[row * size + row]! -= branch.ohms / REFERENCE_OHMS;
    c[row * size + row]! -= branch.henries / REFERENCE_OHMS;
    if (branch.source !== undefined) sourceRow[branch.source] = row;
  }
  for (const { first, second, henries } of reduced.mutuals) {
    const i = voltageCount + first;
    const j = voltageCount + second;
    c[i * size + j]! -= henries / REFERENCE_OHMS;
    c[j * size + i]! -= henries / REFERENCE_OHMS;
  }
  const parameterRow = new Map<number, { row: number; ohms: number }>();
  for (const [index, { a, b, ohms, parameter }] of variables.entries()) {
    const row = voltageCount + branches.length + index;
    stampIncidence(g, size, a, row, 1);
    stampIncidence(g, size, b, row, -1);
    g[row * size + row]! -= ohms / REFERENCE_OHMS;
    parameterRow.set(parameter, { row, ohms });
  }
  return { size, voltageCount, g, c, gLow, cLow, sourceRow, parameterRow, unknownOfNode: reduced.unknownOfNode };
}
