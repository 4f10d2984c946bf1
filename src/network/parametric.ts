import { DisjointSets } from "../disjoint-sets.ts";
import { relevantPart } from "./blocks.ts";
import { ComplexLu } from "./complex-lu.ts";
import { idealJoints, type Network } from "./elements.ts";
import { assemblePencil, type Pencil, REFERENCE_OHMS } from "./nodal-analysis.ts";
import type { Rational } from "./rational.ts";
import { coefficientsFrom, type SampleCircle, sampleCircle } from "./sample-circle.ts";

/** The circle's radius in rad/s: the middle of the decades between a tone cap's corner and a coil's resonance. */
const OMEGA0 = 2 * Math.PI * 3000;
/** Frequencies at which the polynomials are held to the solved network before they are used. */
const CHECK_HZ = [40, 9000];
const CHECK_TOLERANCE = 1e-8;
/** Below this no transfer is worth checking: −240 dB. */
const CHECK_FLOOR = 1e-12;
/** Pivots of I + δW stand near 1; a smaller one has lost its digits to cancellation, as where ideal joints form a loop. */
const MIN_PIVOT = 1e-7;

/** What the network's solution at one complex frequency depends on when only the variable resistors change. */
interface Sample {
  readonly detRe: number;
  readonly detIm: number;
  /** Transfers −y at each source with all variable resistors as they stand. */
  readonly sourceRe: Float64Array;
  readonly sourceIm: Float64Array;
  /** Currents y of the variable resistors, length k. */
  readonly currentRe: Float64Array;
  readonly currentIm: Float64Array;
  /** How a unit change of variable j moves source i: [i · k + j]. */
  readonly reachRe: Float64Array;
  readonly reachIm: Float64Array;
  /** Coupling of the variable resistors with each other, k × k. */
  readonly couplingRe: Float64Array;
  readonly couplingIm: Float64Array;
}

/** One rational transfer function per source over a common denominator; null where a source never reaches the output. */
export interface RationalTransfers {
  /** Numerators of the sources' transfers. */
  readonly numerators: readonly (Float64Array | null)[];
  readonly denominator: Float64Array;
  readonly omega0: number;
}

/** The rational of all sources driven together with these weights; null for silence. */
export function weightedRational(transfers: RationalTransfers, weights: readonly number[]): Rational | null {
  const numerator = new Float64Array(transfers.denominator.length);
  let sounding = false;
  for (const [source, coefficients] of transfers.numerators.entries()) {
    const weight = weights[source]!;
    if (!coefficients || weight === 0) continue;
    sounding = true;
    for (let k = 0; k < coefficients.length; k++) numerator[k]! += weight * coefficients[k]!;
  }
  return sounding ? { numerator, denominator: transfers.denominator, omega0: transfers.omega0 } : null;
}

/**
 * A network whose variable resistors (elements with a `parameter`) take new values again and again. It is solved once at a
 * few complex frequencies; every further set of values costs a small system there (Woodbury's identity), from which the
 * numerators and the denominator follow exactly by interpolation.
 */
export class ParametricNetwork {
  readonly #pencil: Pencil;
  readonly #output: number;
  readonly #parameters: readonly { parameter: number; row: number; ohms: number }[];
  /** Both ends of each variable resistor, and the nodes that ideal joints merge for good. */
  readonly #ends: readonly { parameter: number; a: number; b: number }[];
  readonly #joints: DisjointSets;
  readonly #outputNode: number;
  readonly #liveSources: readonly { source: number; row: number }[];
  readonly #circle: SampleCircle;
  readonly #samples: readonly Sample[] | null;
  readonly #checks: readonly Sample[] | null;
  readonly #work: SmallSystem;

  /** @param output the node whose voltage to node 0 is sought */
  constructor(network: Network, output: number) {
    const relevant = relevantPart(network, output);
    this.#pencil = assemblePencil(relevant);
    this.#output = this.#pencil.unknownOfNode[output]!;
    this.#outputNode = output;
    this.#joints = idealJoints(network);
    this.#ends = network.elements.flatMap((element) =>
      element.kind === "resistor" && element.parameter !== undefined
        ? [{ ...element, parameter: element.parameter }]
        : [],
    );
    this.#parameters = [...this.#pencil.parameterRow].map(([parameter, { row, ohms }]) => ({ parameter, row, ohms }));
    this.#liveSources = Array.from(this.#pencil.sourceRow, (row, source) => ({ source, row })).filter(
      ({ row }) => row >= 0,
    );
    this.#circle = sampleCircle(degreeBound(relevant));
    this.#work = new SmallSystem(this.#parameters.length);
    const solver = new ComplexLu(this.#pencil.size);
    const points = Array.from(this.#circle.re, (re, m) => [re * OMEGA0, this.#circle.im[m]! * OMEGA0] as const);
    this.#samples = this.#solveAll(solver, points);
    this.#checks = this.#solveAll(
      solver,
      CHECK_HZ.map((frequency) => [0, 2 * Math.PI * frequency] as const),
    );
  }

  get sourceCount(): number {
    return this.#pencil.sourceRow.length;
  }

  #solveAll(solver: ComplexLu, points: readonly (readonly [number, number])[]): Sample[] | null {
    if (this.#output < 0) return [];
    const samples: Sample[] = [];
    for (const [sRe, sIm] of points) {
      const sample = this.#solveAt(solver, sRe, sIm);
      if (!sample) return null;
      samples.push(sample);
    }
    return samples;
  }

  #solveAt(solver: ComplexLu, sRe: number, sIm: number): Sample | null {
    const { g, c, size } = this.#pencil;
    for (let at = 0; at < g.length; at++) {
      solver.re[at] = g[at]! + sRe * c[at]!;
      solver.im[at] = sIm * c[at]!;
    }
    if (!solver.factor()) return null;
    const xRe = new Float64Array(size);
    const xIm = new Float64Array(size);
    const solveFor = (row: number) => {
      xRe.fill(0);
      xIm.fill(0);
      xRe[row] = 1;
      solver.solve(xRe, xIm);
    };
    const k = this.#parameters.length;
    const sources = this.#liveSources;
    solveFor(this.#output);
    const sourceRe = Float64Array.from(sources, ({ row }) => -xRe[row]!);
    const sourceIm = Float64Array.from(sources, ({ row }) => -xIm[row]!);
    const currentRe = Float64Array.from(this.#parameters, ({ row }) => xRe[row]!);
    const currentIm = Float64Array.from(this.#parameters, ({ row }) => xIm[row]!);
    const reachRe = new Float64Array(sources.length * k);
    const reachIm = new Float64Array(sources.length * k);
    const couplingRe = new Float64Array(k * k);
    const couplingIm = new Float64Array(k * k);
    for (let j = 0; j < k; j++) {
      solveFor(this.#parameters[j]!.row);
      for (let i = 0; i < sources.length; i++) {
        reachRe[i * k + j] = -xRe[sources[i]!.row]!;
        reachIm[i * k + j] = -xIm[sources[i]!.row]!;
      }
      for (let i = 0; i < k; i++) {
        couplingRe[i * k + j] = xRe[this.#parameters[i]!.row]!;
        couplingIm[i * k + j] = xIm[this.#parameters[i]!.row]!;
      }
    }
    const { detRe, detIm } = solver;
    return { detRe, detIm, sourceRe, sourceIm, currentRe, currentIm, reachRe, reachIm, couplingRe, couplingIm };
  }

  /**
   * The transfer functions with the variable resistors at these values.
   * @param ohms value of each parameter; 0 is an ideal joint
   * @returns null where the polynomials do not reproduce the network, so that it must be solved frequency by frequency
   */
  transfersAt(ohms: ArrayLike<number>): RationalTransfers | null {
    const count = this.#circle.coefficientCount;
    const silent = new Array<Float64Array | null>(this.sourceCount).fill(null);
    if (this.#output < 0 || this.#isShorted(ohms))
      return { numerators: silent, denominator: Float64Array.of(1), omega0: OMEGA0 };
    if (!this.#samples || !this.#checks) return null;
    const change = Float64Array.from(
      this.#parameters,
      ({ parameter, ohms: old }) => (old - ohms[parameter]!) / REFERENCE_OHMS,
    );
    const half = count / 2;
    const live = this.#liveSources.length;
    const valuesRe = Array.from({ length: live + 1 }, () => new Float64Array(half));
    const valuesIm = Array.from({ length: live + 1 }, () => new Float64Array(half));
    for (let m = 0; m < half; m++) {
      const sample = this.#samples[m]!;
      if (!this.#work.solve(sample, change)) return null;
      const { detRe, detIm } = this.#work;
      valuesRe[live]![m] = detRe;
      valuesIm[live]![m] = detIm;
      for (let i = 0; i < live; i++) {
        this.#work.transferOf(sample, i);
        const { re, im } = this.#work;
        valuesRe[i]![m] = re * detRe - im * detIm;
        valuesIm[i]![m] = re * detIm + im * detRe;
      }
    }
    const polynomials = valuesRe.map((re, i) => coefficientsFrom(this.#circle, re, valuesIm[i]!));
    const denominator = polynomials[live]!;
    const numerators = silent;
    for (let i = 0; i < live; i++) numerators[this.#liveSources[i]!.source] = polynomials[i]!;
    const transfers = { numerators, denominator, omega0: OMEGA0 };
    return this.#reproduces(polynomials, change) ? transfers : null;
  }

  /** Whether resistors at 0 Ω join the output to node 0. */
  #isShorted(ohms: ArrayLike<number>): boolean {
    const closed = this.#ends.filter(({ parameter }) => ohms[parameter] === 0);
    if (closed.length === 0) return false;
    const joints = new DisjointSets(this.#joints);
    for (const { a, b } of closed) joints.join(a, b);
    return joints.find(this.#outputNode) === joints.find(0);
  }

  #reproduces(polynomials: readonly Float64Array[], change: Float64Array): boolean {
    const live = this.#liveSources.length;
    return this.#checks!.every((sample, index) => {
      if (!this.#work.solve(sample, change)) return false;
      const x = (2 * Math.PI * CHECK_HZ[index]!) / OMEGA0;
      const [dRe, dIm] = valueAt(polynomials[live]!, x);
      const norm = dRe * dRe + dIm * dIm;
      for (let i = 0; i < live; i++) {
        this.#work.transferOf(sample, i);
        const { re, im } = this.#work;
        const [nRe, nIm] = valueAt(polynomials[i]!, x);
        const error = Math.hypot((nRe * dRe + nIm * dIm) / norm - re, (nIm * dRe - nRe * dIm) / norm - im);
        if (!(error <= CHECK_TOLERANCE * Math.hypot(re, im) + CHECK_FLOOR)) return false;
      }
      return true;
    });
  }
}

/** Every capacitor and inductance adds at most one power of s; parallel capacitors count once. */
function degreeBound(network: Network): number {
  const pairs = new Set<string>();
  let inductances = 0;
  for (const { kind, a, b, ...element } of network.elements) {
    if (kind === "capacitor") pairs.add(`${Math.min(a, b)}-${Math.max(a, b)}`);
    else if ("henries" in element && element.henries > 0) inductances++;
  }
  return pairs.size + inductances;
}

function valueAt(polynomial: Float64Array, x: number): [re: number, im: number] {
  let re = 0;
  let im = 0;
  for (let k = polynomial.length - 1; k >= 0; k--) {
    const kept = re;
    re = polynomial[k]! - im * x;
    im = kept * x;
  }
  return [re, im];
}

/** (I + δW) u = δ·y for the change δ of the variable resistors, and what follows from u. */
class SmallSystem {
  detRe = 1;
  detIm = 0;
  re = 0;
  im = 0;
  readonly #k: number;
  readonly #lu: ComplexLu;
  readonly #uRe: Float64Array;
  readonly #uIm: Float64Array;

  constructor(k: number) {
    this.#k = k;
    this.#lu = new ComplexLu(k);
    this.#uRe = new Float64Array(k);
    this.#uIm = new Float64Array(k);
  }

  /** @returns false where the changed network is singular or nearly so at this frequency */
  solve(sample: Sample, change: Float64Array): boolean {
    const k = this.#k;
    const lu = this.#lu;
    for (let i = 0; i < k; i++) {
      const delta = change[i]!;
      for (let j = 0; j < k; j++) {
        lu.re[i * k + j] = delta * sample.couplingRe[i * k + j]! + (i === j ? 1 : 0);
        lu.im[i * k + j] = delta * sample.couplingIm[i * k + j]!;
      }
      this.#uRe[i] = delta * sample.currentRe[i]!;
      this.#uIm[i] = delta * sample.currentIm[i]!;
    }
    if (!lu.factor() || lu.smallestPivot < MIN_PIVOT) return false;
    if (k > 0) lu.solve(this.#uRe, this.#uIm);
    this.detRe = sample.detRe * lu.detRe - sample.detIm * lu.detIm;
    this.detIm = sample.detRe * lu.detIm + sample.detIm * lu.detRe;
    return true;
  }

  /** Leaves the transfer of live source `i` in `re`, `im`. */
  transferOf(sample: Sample, i: number): void {
    const k = this.#k;
    let re = sample.sourceRe[i]!;
    let im = sample.sourceIm[i]!;
    for (let j = 0; j < k; j++) {
      const at = i * k + j;
      re -= sample.reachRe[at]! * this.#uRe[j]! - sample.reachIm[at]! * this.#uIm[j]!;
      im -= sample.reachRe[at]! * this.#uIm[j]! + sample.reachIm[at]! * this.#uRe[j]!;
    }
    this.re = re;
    this.im = im;
  }
}
