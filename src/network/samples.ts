import type { CompactPencil } from "./branch-elimination.ts";
import { ComplexLu } from "./complex-lu.ts";
import { stampAdmittance } from "./stamp.ts";

/** A source that can reach the output: a kept unknown by position, or a lone branch by index (the other is −1). */
export interface LiveSource {
  readonly source: number;
  readonly position: number;
  readonly lone: number;
}

/** What is sought of a compact system, by positions among its unknowns. */
export interface Sought {
  readonly output: number;
  readonly sources: readonly LiveSource[];
  readonly variables: readonly number[];
}

/**
 * A network solved at a few complex frequencies: all that its transfers depend on when only its variable resistors change.
 * Values of point m stand at m · live (sources), m · k (variables), m · live · k and m · k · k.
 */
export class Samples {
  readonly count: number;
  readonly detRe: Float64Array;
  readonly detIm: Float64Array;
  /** Transfer −y at each source with the variable resistors as they stand. */
  readonly sourceRe: Float64Array;
  readonly sourceIm: Float64Array;
  /** Currents y of the variable resistors. */
  readonly currentRe: Float64Array;
  readonly currentIm: Float64Array;
  /** How a unit change of variable j moves source i: i · k + j. */
  readonly reachRe: Float64Array;
  readonly reachIm: Float64Array;
  /** Coupling of the variable resistors with each other. */
  readonly couplingRe: Float64Array;
  readonly couplingIm: Float64Array;
  /** Whether every point had a solution. */
  readonly solved: boolean;
  readonly #pencil: CompactPencil;
  readonly #sought: Sought;
  readonly #lu: ComplexLu;
  readonly #xRe: Float64Array;
  readonly #xIm: Float64Array;
  readonly #admittanceRe: Float64Array;
  readonly #admittanceIm: Float64Array;

  /** @param pointsRe, pointsIm complex frequencies in rad/s */
  constructor(pencil: CompactPencil, sought: Sought, pointsRe: Float64Array, pointsIm: Float64Array) {
    const k = sought.variables.length;
    const live = sought.sources.length;
    this.count = pointsRe.length;
    this.#pencil = pencil;
    this.#sought = sought;
    this.#lu = new ComplexLu(pencil.size);
    this.#xRe = new Float64Array(pencil.size);
    this.#xIm = new Float64Array(pencil.size);
    this.#admittanceRe = new Float64Array(pencil.lone.length);
    this.#admittanceIm = new Float64Array(pencil.lone.length);
    this.detRe = new Float64Array(this.count);
    this.detIm = new Float64Array(this.count);
    this.sourceRe = new Float64Array(this.count * live);
    this.sourceIm = new Float64Array(this.count * live);
    this.currentRe = new Float64Array(this.count * k);
    this.currentIm = new Float64Array(this.count * k);
    this.reachRe = new Float64Array(this.count * live * k);
    this.reachIm = new Float64Array(this.count * live * k);
    this.couplingRe = new Float64Array(this.count * k * k);
    this.couplingIm = new Float64Array(this.count * k * k);
    let solved = true;
    for (let m = 0; m < this.count && solved; m++) solved = this.#solveAt(m, pointsRe[m]!, pointsIm[m]!);
    this.solved = solved;
  }

  #solveAt(m: number, sRe: number, sIm: number): boolean {
    this.#assemble(sRe, sIm);
    const lu = this.#lu;
    if (!lu.factor()) return false;
    this.#keepDeterminant(m, sRe, sIm);
    const { sources, variables, output } = this.#sought;
    const k = variables.length;
    const live = sources.length;
    this.#solveFor(output);
    this.#readSources(this.sourceRe, this.sourceIm, m * live, 1);
    this.#readVariables(this.currentRe, this.currentIm, m * k, 1);
    for (let j = 0; j < k; j++) {
      this.#solveFor(variables[j]!);
      this.#readSources(this.reachRe, this.reachIm, m * live * k + j, k);
      this.#readVariables(this.couplingRe, this.couplingIm, m * k * k + j, k);
    }
    return true;
  }

  #assemble(sRe: number, sIm: number): void {
    const { g, c, lone, size } = this.#pencil;
    const { re, im } = this.#lu;
    for (let at = 0; at < g.length; at++) {
      re[at] = g[at]! + sRe * c[at]!;
      im[at] = sIm * c[at]!;
    }
    for (let index = 0; index < lone.length; index++) {
      const { plus, minus, z0, z1 } = lone[index]!;
      const zRe = z0 + sRe * z1;
      const zIm = sIm * z1;
      const norm = zRe * zRe + zIm * zIm;
      this.#admittanceRe[index] = zRe / norm;
      this.#admittanceIm[index] = -zIm / norm;
      stampAdmittance(re, size, plus, minus, zRe / norm);
      stampAdmittance(im, size, plus, minus, -zIm / norm);
    }
  }

  /** The whole determinant: that of the compact system times Π(−Z) over the lone branches. */
  #keepDeterminant(m: number, sRe: number, sIm: number): void {
    let { detRe: re, detIm: im } = this.#lu;
    for (const { z0, z1 } of this.#pencil.lone) {
      const zRe = -(z0 + sRe * z1);
      const zIm = -(sIm * z1);
      const product = re * zRe - im * zIm;
      im = re * zIm + im * zRe;
      re = product;
    }
    this.detRe[m] = re;
    this.detIm[m] = im;
  }

  #solveFor(position: number): void {
    this.#xRe.fill(0);
    this.#xIm.fill(0);
    this.#xRe[position] = 1;
    this.#lu.solve(this.#xRe, this.#xIm);
  }

  #readVariables(re: Float64Array, im: Float64Array, first: number, step: number): void {
    const { variables } = this.#sought;
    for (let i = 0; i < variables.length; i++) {
      re[first + i * step] = this.#xRe[variables[i]!]!;
      im[first + i * step] = this.#xIm[variables[i]!]!;
    }
  }

  #readSources(re: Float64Array, im: Float64Array, first: number, step: number): void {
    const { sources } = this.#sought;
    const [xRe, xIm] = [this.#xRe, this.#xIm];
    for (let i = 0; i < sources.length; i++) {
      const at = first + i * step;
      const { position, lone } = sources[i]!;
      if (lone < 0) {
        re[at] = -xRe[position]!;
        im[at] = -xIm[position]!;
        continue;
      }
      const { plus, minus } = this.#pencil.lone[lone]!;
      const vRe = (plus < 0 ? 0 : xRe[plus]!) - (minus < 0 ? 0 : xRe[minus]!);
      const vIm = (plus < 0 ? 0 : xIm[plus]!) - (minus < 0 ? 0 : xIm[minus]!);
      const yRe = this.#admittanceRe[lone]!;
      const yIm = this.#admittanceIm[lone]!;
      re[at] = -(vRe * yRe - vIm * yIm);
      im[at] = -(vRe * yIm + vIm * yRe);
    }
  }
}
