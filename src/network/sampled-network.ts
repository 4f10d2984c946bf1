import { compactPencil } from "./branch-elimination.ts";
import { degreeBound, type Network } from "./elements.ts";
import { assemblePencil, type Pencil, REFERENCE_OHMS } from "./nodal-analysis.ts";
import { type Polynomials, tidied, valueAt } from "./polynomials.ts";
import { fittedPolynomial, type SampleCircle, sampleCircle } from "./sample-circle.ts";
import { type LiveSource, Samples, type Sought } from "./samples.ts";
import { OMEGA0, type Sampling } from "./sampling.ts";
import { SmallSystem } from "./small-system.ts";

const CHECK_TOLERANCE = 1e-8;
/** Below this no transfer is worth checking: −240 dB. */
const CHECK_FLOOR = 1e-12;

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
   * @returns "singular" where the network has no solution or one that lost its digits, "inexact" where the polynomials do not
   * reproduce it
   */
  polynomialsAt(ohms: ArrayLike<number>): Polynomials | "singular" | "inexact" {
    if (!this.#samples.solved || !this.#checks.solved) return "singular";
    for (let j = 0; j < this.#change.length; j++) {
      const { parameter, ohms: old } = this.#variables[j]!;
      this.#change[j] = (old - ohms[parameter]!) / REFERENCE_OHMS;
    }
    if (!this.#sample()) return "singular";
    const polynomials = tidied(
      this.#valuesRe.map((re, i) => fittedPolynomial(this.#circle, this.#radii, re, this.#valuesIm[i]!)),
    );
    return this.#reproducedBy(polynomials) ? polynomials : "inexact";
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

  #reproducedBy(polynomials: Polynomials): boolean {
    const small = this.#small;
    const checks = this.#checks;
    const live = this.sources.length;
    for (let m = 0; m < checks.count; m++) {
      if (!small.solve(checks, m, this.#change)) return false;
      const x = (2 * Math.PI * this.#checksHz[m]!) / OMEGA0;
      const [dRe, dIm] = valueAt(polynomials[live]!, x);
      const norm = dRe * dRe + dIm * dIm;
      for (let i = 0; i < live; i++) {
        small.transferOf(checks, m, i);
        const [nRe, nIm] = valueAt(polynomials[i]!, x);
        const errorRe = (nRe * dRe + nIm * dIm) / norm - small.re;
        const errorIm = (nIm * dRe - nRe * dIm) / norm - small.im;
        const allowed = CHECK_TOLERANCE * (Math.abs(small.re) + Math.abs(small.im)) + CHECK_FLOOR;
        if (!(Math.abs(errorRe) + Math.abs(errorIm) <= allowed)) return false;
      }
    }
    return true;
  }
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
