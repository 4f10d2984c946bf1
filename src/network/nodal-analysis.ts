import { PresolderError } from "../errors.ts";
import { ComplexLu } from "./complex-lu.ts";
import type { Network } from "./elements.ts";
import { byDegree, picked } from "./elimination-order.ts";
import { type ReducedNetwork, reduceNodes } from "./reduce-nodes.ts";
import { stampAdmittance } from "./stamp.ts";

/**
 * The matrix pencil A(s) = G + s·C of modified nodal analysis (C. W. Ho, A. E. Ruehli, P. A. Brennan, 1975): node voltages,
 * then branch currents. Both matrices are real and symmetric, so the network is reciprocal by construction.
 */
export interface Pencil {
  readonly size: number;
  readonly voltageCount: number;
  readonly g: Float64Array;
  readonly c: Float64Array;
  /** Current unknown of each source's branch. */
  readonly sourceRow: Int32Array;
  /** Current unknown of each variable resistor, by parameter. */
  readonly parameterRow: ReadonlyMap<number, { row: number; ohms: number }>;
  readonly unknownOfNode: Int32Array;
}

/**
 * Impedances are divided by this and admittances multiplied, so that a guard's entries stand near 1 beside the ±1 of the
 * incidence; voltages are unchanged by it.
 */
export const REFERENCE_OHMS = 1e5;

function stampIncidence(matrix: Float64Array, size: number, node: number, row: number, sign: number): void {
  if (node < 0) return;
  matrix[node * size + row]! += sign;
  matrix[row * size + node]! += sign;
}

/** Assembles the pencil of a network. */
export function assemblePencil(network: Network): Pencil {
  const reduced: ReducedNetwork = reduceNodes(network);
  const { voltageCount, branches, variables } = reduced;
  const size = voltageCount + branches.length + variables.length;
  const g = new Float64Array(size * size);
  const c = new Float64Array(size * size);
  for (const { a, b, siemens } of reduced.conductors) stampAdmittance(g, size, a, b, siemens * REFERENCE_OHMS);
  for (const { a, b, farads } of reduced.capacitors) stampAdmittance(c, size, a, b, farads * REFERENCE_OHMS);
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
  return { size, voltageCount, g, c, sourceRow, parameterRow, unknownOfNode: reduced.unknownOfNode };
}

/** Complex values over a list of frequencies. */
export interface Spectrum {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/**
 * Voltage from `outputNode` to node 0 for a unit EMF of each source in turn, all others at rest: the exact solution at each
 * frequency. One solution of the transposed (here: the same, symmetric) system serves every source.
 * @param frequenciesHz frequencies above 0
 * @returns one spectrum per source, of the frequencies' length; dimensionless (V/V)
 * @throws PresolderError NETWORK_SINGULAR
 */
export function solveTransfers(pencil: Pencil, outputNode: number, frequenciesHz: Float64Array): Spectrum[] {
  const { size, sourceRow } = pencil;
  const spectra = Array.from(sourceRow, () => ({
    re: new Float64Array(frequenciesHz.length),
    im: new Float64Array(frequenciesHz.length),
  }));
  const output = pencil.unknownOfNode[outputNode]!;
  if (output < 0) return spectra;
  const order = byDegree(
    pencil,
    Array.from({ length: size }, (_, row) => row),
  );
  const [g, c] = [picked(pencil.g, size, order), picked(pencil.c, size, order)];
  const placeOf = new Int32Array(size);
  for (const [place, row] of order.entries()) placeOf[row] = place;
  const lu = new ComplexLu(size);
  const xRe = new Float64Array(size);
  const xIm = new Float64Array(size);
  for (let i = 0; i < frequenciesHz.length; i++) {
    const omega = 2 * Math.PI * frequenciesHz[i]!;
    lu.re.set(g);
    for (let at = 0; at < c.length; at++) lu.im[at] = omega * c[at]!;
    if (!lu.factor()) throw new PresolderError("NETWORK_SINGULAR", "the network's equations have no unique solution");
    xRe.fill(0);
    xIm.fill(0);
    xRe[placeOf[output]!] = 1;
    lu.solve(xRe, xIm);
    for (const [source, row] of sourceRow.entries()) {
      if (row < 0) continue;
      spectra[source]!.re[i] = -xRe[placeOf[row]!]!;
      spectra[source]!.im[i] = -xIm[placeOf[row]!]!;
    }
  }
  return spectra;
}
