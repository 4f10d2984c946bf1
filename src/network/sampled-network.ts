import { compactPencil } from "./branch-elimination.ts";
import { degreeBound, type Network } from "./elements.ts";
import { assemblePencil, type Pencil, REFERENCE_OHMS } from "./pencil.ts";
import { type Polynomial, sumAt, tidied, valueAt } from "./polynomials.ts";
import { type FittedPolynomial, fittedPolynomial, type SampleCircle, sampleCircle } from "./sample-circle.ts";
import { type LiveSource, Samples, type Sought } from "./samples.ts";
import { OMEGA0, type Sampling } from "./sampling.ts";
import { SmallSystem } from "./small-system.ts";

const CHECK_TOLERANCE = 1e-8;
/** Below this no transfer is worth checking: −240 dB. */
const CHECK_FLOOR = 1e-12;
/** Rounding seen at a few frequencies is a few draws of what it is everywhere. */
const BEYOND_SEEN = 16;

interface Variable {
  readonly parameter: number;
  readonly ohms: number;
}

/** A network solved once at a few complex frequencies, from which its transfers follow for any values of its variable resistors. */
export class SampledNetwork {
  /** Those that can reach the output. */
  readonly sources: readonly LiveSource[];
  readonly #variables: readonly Variable[];
  readonly #circle: SampleCircle;
  readonly #radii: readonly number[];
  readonly #samples: Samples;
  readonly #checks: Samples;
  readonly #checksHz: readonly number[];
  readonly #small: SmallSystem;
  readonly #change: Float64Array;
  readonly #valuesRe: readonly Float64Array[];
  readonly #valuesIm: readonly Float64Array[];

  /** @param output the node whose voltage to node 0 is sought; not joined to it */
  constructor(network: Network, output: number, { radii, checksHz }: Sampling) {
    const pencil = assemblePencil(network);
    const compact = compactPencil(pencil);
    const sought = soughtIn(pencil, compact, output);
    this.sources = sought.sources;
    this.#variables = Array.from(pencil.parameterRow, ([parameter, { ohms }]) => ({ parameter, ohms }));
    this.#circle = sampleCircle(degreeBound(network));
    this.#radii = radii;
    const onCircles = (unit: Float64Array) =>
      Float64Array.from(radii.flatMap((radius) => Array.from(unit, (value) => OMEGA0 * radius * value)));
    this.#samples = new Samples(compact, sought, onCircles(this.#circle.re), onCircles(this.#circle.im));
    this.#checksHz = checksHz;
    const checks = Float64Array.from(checksHz, (hz) => 2 * Math.PI * hz);
    this.#checks = new Samples(compact, sought, new Float64Array(checks.length), checks);
    this.#small = new SmallSystem(sought.variables.length, sought.sources.length);
    this.#change = new Float64Array(sought.variables.length);
    const buffers = () =>
      Array.from({ length: sought.sources.length + 1 }, () => new Float64Array(this.#samples.count));
    this.#valuesRe = buffers();
    this.#valuesIm = buffers();
  }

  /**
   * @param ohms value of each parameter; 0 is an ideal joint
   * @returns numerators in the order of `sources`, then the denominator; "singular" where the network has no solution or one that lost its digits, "inexact" where the polynomials do not
   * reproduce it
   */
  polynomialsAt(ohms: ArrayLike<number>): readonly Polynomial[] | "singular" | "inexact" {
    if (!this.#samples.solved || !this.#checks.solved) return "singular";
    for (let j = 0; j < this.#change.length; j++) {
      const { parameter, ohms: old } = this.#variables[j]!;
      this.#change[j] = (old - ohms[parameter]!) / REFERENCE_OHMS;
    }
    if (!this.#sample()) return "singular";
    const fitted = this.#valuesRe.map((re, i) => fittedPolynomial(this.#circle, this.#radii, re, this.#valuesIm[i]!));
    const { polynomials, scale } = tidied(fitted);
    const noise = this.#noiseOf(polynomials, fitted, scale);
    if (!noise) return "inexact";
    return polynomials.map((coefficients, i) => ({ coefficients, rounding: fitted[i]!.rounding, noise: noise[i]! }));
  }

  /** Fills in the values of numerators and denominator on the circles. @returns false where there are none */
  #sample(): boolean {
    const samples = this.#samples;
    const small = this.#small;
    const [valuesRe, valuesIm] = [this.#valuesRe, this.#valuesIm];
    const live = this.sources.length;
    for (let m = 0; m < samples.count; m++) {
      if (!small.solve(samples, m, this.#change)) return false;
      const { detRe, detIm } = small;
      valuesRe[live]![m] = detRe;
      valuesIm[live]![m] = detIm;
      for (let i = 0; i < live; i++) {
        small.transferOf(samples, m, i);
        valuesRe[i]![m] = small.re * detRe - small.im * detIm;
        valuesIm[i]![m] = small.re * detIm + small.im * detRe;
      }
    }
    return true;
  }

  /**
   * How many times its rounding each polynomial may be off: what is seen of it at the checks, and a good deal more.
   * @returns undefined where they do not reproduce the network
   */
  #noiseOf(
    polynomials: readonly Float64Array[],
    fitted: readonly FittedPolynomial[],
    scale: number,
  ): Float64Array | undefined {
    const small = this.#small;
    const checks = this.#checks;
    const live = this.sources.length;
    const { length } = polynomials[live]!;
    const noise = new Float64Array(live + 1).fill(scale);
    for (let m = 0; m < checks.count; m++) {
      if (!small.solve(checks, m, this.#change)) return undefined;
      const x = (2 * Math.PI * this.#checksHz[m]!) / OMEGA0;
      const [dRe, dIm] = valueAt(polynomials[live]!, x);
      const [detRe, detIm] = [scale * small.detRe, scale * small.detIm];
      // On one circle the rounding of every polynomial goes with the powers alike.
      const shared = this.#radii.length === 1 ? roundingAt(fitted[live]!, x, length) : undefined;
      const offD = Math.abs(dRe - detRe) + Math.abs(dIm - detIm);
      const timesD = offD / (fitted[live]!.rounding[0]! * (shared ?? roundingAt(fitted[live]!, x, length)));
      if (timesD > noise[live]!) noise[live] = timesD;
      const norm = dRe * dRe + dIm * dIm;
      for (let i = 0; i < live; i++) {
        small.transferOf(checks, m, i);
        const [nRe, nIm] = valueAt(polynomials[i]!, x);
        const errorRe = (nRe * dRe + nIm * dIm) / norm - small.re;
        const errorIm = (nIm * dRe - nRe * dIm) / norm - small.im;
        const allowed = CHECK_TOLERANCE * (Math.abs(small.re) + Math.abs(small.im)) + CHECK_FLOOR;
        if (!(Math.abs(errorRe) + Math.abs(errorIm) <= allowed)) return undefined;
        const offRe = nRe - (small.re * detRe - small.im * detIm);
        const offIm = nIm - (small.re * detIm + small.im * detRe);
        const off = Math.abs(offRe) + Math.abs(offIm);
        const times = off / (fitted[i]!.rounding[0]! * (shared ?? roundingAt(fitted[i]!, x, length)));
        if (times > noise[i]!) noise[i] = times;
      }
    }
    for (let i = 0; i <= live; i++) noise[i]! *= BEYOND_SEEN;
    return noise;
  }
}

/** What the rounding of all coefficients up to a length comes to at x, in that of the first. */
function roundingAt({ rounding }: FittedPolynomial, x: number, length: number): number {
  return sumAt(rounding, x, length) / rounding[0]!;
}

function soughtIn(pencil: Pencil, compact: ReturnType<typeof compactPencil>, output: number): Sought {
  const { positionOf, lone } = compact;
  const sources = Array.from(pencil.sourceRow, (row, source) => ({ source, row }))
    .filter(({ row }) => row >= 0)
    .map(({ source, row }) => ({
      source,
      position: positionOf[row]!,
      lone: lone.findIndex((branch) => branch.row === row),
    }));
  const variables = Array.from(pencil.parameterRow.values(), ({ row }) => positionOf[row]!);
  return { output: positionOf[pencil.unknownOfNode[output]!]!, sources, variables };
}
