import { PresolderError } from "../errors.ts";
import { ExactSolver } from "./exact/exact-solver.ts";
import type { Pencil } from "./pencil.ts";

/** Complex values over a list of frequencies. */
export interface Spectrum {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** A value and its slope over the logarithm of the frequency. */
export interface ValueAndSlope {
  readonly re: number;
  readonly im: number;
  readonly slopeRe: number;
  readonly slopeIm: number;
}

/**
 * Voltage from a node to node 0 for a unit EMF of each source in turn, all others at rest: the exact solution at each frequency,
 * dimensionless (V/V). One solution of the transposed (here: the same, symmetric) system serves every source.
 */
export class TransferSolver {
  readonly #rows: Int32Array;
  readonly #output: number;
  readonly #solver: ExactSolver;

  constructor(pencil: Pencil, outputNode: number) {
    this.#rows = pencil.sourceRow;
    this.#output = pencil.unknownOfNode[outputNode]!;
    this.#solver = new ExactSolver(
      pencil,
      Array.from(pencil.sourceRow).filter((row) => row >= 0),
    );
  }

  /**
   * @param frequenciesHz above 0
   * @returns one spectrum per source
   * @throws PresolderError NETWORK_SINGULAR
   */
  solve(frequenciesHz: Float64Array): Spectrum[] {
    const { length } = frequenciesHz;
    const spectra = Array.from(this.#rows, () => ({ re: new Float64Array(length), im: new Float64Array(length) }));
    if (this.#output < 0) return spectra;
    for (let i = 0; i < length; i++) {
      this.#solveAt(frequenciesHz[i]!);
      for (const [source, row] of this.#rows.entries()) {
        if (row < 0) continue;
        spectra[source]!.re[i] = -this.#solver.re(row);
        spectra[source]!.im[i] = -this.#solver.im(row);
      }
    }
    return spectra;
  }

  /** Each source's transfer at one frequency; null where the equations leave a double no digits of the slopes. */
  solveWithSlopes(frequencyHz: number): ValueAndSlope[] | null {
    const still = { re: 0, im: 0, slopeRe: 0, slopeIm: 0 };
    if (this.#output < 0) return Array.from(this.#rows, () => still);
    this.#solveAt(frequencyHz);
    const solver = this.#solver;
    if (!solver.differentiate(2 * Math.PI * frequencyHz)) return null;
    return Array.from(this.#rows, (row) =>
      row < 0
        ? still
        : { re: -solver.re(row), im: -solver.im(row), slopeRe: -solver.slopeRe(row), slopeIm: -solver.slopeIm(row) },
    );
  }

  #solveAt(frequencyHz: number): void {
    if (!this.#solver.solve(2 * Math.PI * frequencyHz, this.#output))
      throw new PresolderError("NETWORK_SINGULAR", "the network's equations have no unique solution");
  }
}

/** As `TransferSolver.solve`, of one list of frequencies. */
export function solveTransfers(pencil: Pencil, outputNode: number, frequenciesHz: Float64Array): Spectrum[] {
  return new TransferSolver(pencil, outputNode).solve(frequenciesHz);
}
