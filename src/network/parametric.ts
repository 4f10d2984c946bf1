import { BoundedMap } from "../bounded-map.ts";
import { DisjointSets } from "../disjoint-sets.ts";
import { relevantPart } from "./blocks.ts";
import { compactPencil } from "./branch-elimination.ts";
import { type Element, idealJoints, type Network, type Resistor } from "./elements.ts";
import { assemblePencil, type Pencil, REFERENCE_OHMS } from "./nodal-analysis.ts";
import type { Rational } from "./rational.ts";
import { coefficientsFrom, type SampleCircle, sampleCircle } from "./sample-circle.ts";
import { type LiveSource, Samples, type Sought } from "./samples.ts";
import { SmallSystem } from "./small-system.ts";

/** The circle's radius in rad/s: the middle of the decades between a tone cap's corner and a coil's resonance. */
const OMEGA0 = 2 * Math.PI * 5000;
/** Frequencies at which the polynomials are held to the solved network before they are used. */
const CHECK_HZ = Float64Array.of(30, 18_000);
const CHECK_TOLERANCE = 1e-8;
/** Below this no transfer is worth checking: −240 dB. */
const CHECK_FLOOR = 1e-12;
/** Pots at their ends in a sweep: some ten combinations. */
const MAX_KNOWN_JOINTS = 64;

/** One rational transfer function per source over a common denominator; null where a source never reaches the output. */
export interface RationalTransfers {
  /** Numerators of the sources' transfers. */
  readonly numerators: readonly (Float64Array | null)[];
  readonly denominator: Float64Array;
  readonly omega0: number;
}

/** A sum smaller than this share of what was summed is the rounding that is left when sources cancel. */
export const CANCELLED = 1e-10;

/** The rational of all sources driven together with these weights; null for silence, cancelling sources included. */
export function weightedRational(transfers: RationalTransfers, weights: readonly number[]): Rational | null {
  const numerator = new Float64Array(transfers.denominator.length);
  let largestTerm = 0;
  for (const [source, coefficients] of transfers.numerators.entries()) {
    const weight = weights[source]!;
    if (!coefficients || weight === 0) continue;
    for (let k = 0; k < coefficients.length; k++) {
      const term = weight * coefficients[k]!;
      numerator[k]! += term;
      largestTerm = Math.max(largestTerm, Math.abs(term));
    }
  }
  const isSounding = numerator.some((coefficient) => Math.abs(coefficient) > CANCELLED * largestTerm);
  return isSounding ? { numerator, denominator: transfers.denominator, omega0: transfers.omega0 } : null;
}

type VariableResistor = Resistor & { readonly parameter: number };

function isVariable(element: Element): element is VariableResistor {
  return element.kind === "resistor" && element.parameter !== undefined;
}

interface Variable {
  readonly parameter: number;
  readonly ohms: number;
}

/** Everything that stays the same from one set of values to the next; null where the output is tied to node 0. */
interface Solved {
  readonly variables: readonly Variable[];
  readonly sources: readonly LiveSource[];
  readonly circle: SampleCircle;
  readonly samples: Samples;
  readonly checks: Samples;
  readonly small: SmallSystem;
  readonly valuesRe: readonly Float64Array[];
  readonly valuesIm: readonly Float64Array[];
}

/**
 * A network whose variable resistors (elements with a `parameter`) take new values again and again. It is solved once at a
 * few complex frequencies; every further set of values costs a small system there (Woodbury's identity), from which the
 * numerators and the denominator follow exactly by interpolation.
 */
export class ParametricNetwork {
  readonly #network: Network;
  readonly #output: number;
  readonly #joints: DisjointSets;
  readonly #variables: readonly VariableResistor[];
  /** Whether the output is joined to node 0, by which variable resistors are at 0 Ω. */
  readonly #shortedBy = new BoundedMap<string, boolean>(MAX_KNOWN_JOINTS);
  readonly #solved: Solved | null;

  /** @param output the node whose voltage to node 0 is sought */
  constructor(network: Network, output: number) {
    this.#network = network;
    this.#output = output;
    this.#joints = idealJoints(network);
    this.#variables = network.elements.filter(isVariable);
    this.#solved =
      this.#joints.find(output) === this.#joints.find(0) ? null : solveAround(relevantPart(network, output), output);
  }

  /**
   * The transfer functions with the variable resistors at these values.
   * @param ohms value of each parameter; 0 is an ideal joint
   * @returns null where the polynomials do not reproduce the network, so that it must be solved frequency by frequency
   */
  transfersAt(ohms: ArrayLike<number>): RationalTransfers | null {
    const numerators = new Array<Float64Array | null>(this.#network.sourceCount).fill(null);
    if (!this.#solved || this.#isShorted(ohms)) return { numerators, denominator: Float64Array.of(1), omega0: OMEGA0 };
    const polynomials = polynomialsAt(this.#solved, ohms);
    if (!polynomials) return null;
    for (const [i, { source }] of this.#solved.sources.entries()) numerators[source] = polynomials[i]!;
    return { numerators, denominator: polynomials.at(-1)!, omega0: OMEGA0 };
  }

  /** Whether resistors at 0 Ω join the output to node 0. */
  #isShorted(ohms: ArrayLike<number>): boolean {
    let key = "";
    for (const { parameter } of this.#variables) if (ohms[parameter] === 0) key += `${parameter} `;
    if (key === "") return false;
    const known = this.#shortedBy.get(key);
    if (known !== undefined) return known;
    const joints = new DisjointSets(this.#joints);
    for (const { a, b, parameter } of this.#variables) if (ohms[parameter] === 0) joints.join(a, b);
    const shorted = joints.find(this.#output) === joints.find(0);
    this.#shortedBy.set(key, shorted);
    return shorted;
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

function solveAround(network: Network, output: number): Solved {
  const pencil = assemblePencil(network);
  const compact = compactPencil(pencil);
  const sought = soughtIn(pencil, compact, output);
  const circle = sampleCircle(degreeBound(network));
  const scaled = (values: Float64Array, scale: number) => values.map((value) => value * scale);
  const samples = new Samples(compact, sought, scaled(circle.re, OMEGA0), scaled(circle.im, OMEGA0));
  const checks = new Samples(compact, sought, new Float64Array(CHECK_HZ.length), scaled(CHECK_HZ, 2 * Math.PI));
  const buffers = () => Array.from({ length: sought.sources.length + 1 }, () => new Float64Array(circle.re.length));
  return {
    variables: Array.from(pencil.parameterRow, ([parameter, { ohms }]) => ({ parameter, ohms })),
    sources: sought.sources,
    circle,
    samples,
    checks,
    small: new SmallSystem(sought.variables.length, sought.sources.length),
    valuesRe: buffers(),
    valuesIm: buffers(),
  };
}

/** The numerator of every live source, then the denominator; null where they fail their check. */
function polynomialsAt(solved: Solved, ohms: ArrayLike<number>): Float64Array[] | null {
  const { variables, circle, samples, checks, small, valuesRe, valuesIm } = solved;
  if (!samples.solved || !checks.solved) return null;
  const change = new Float64Array(variables.length);
  for (let j = 0; j < change.length; j++) {
    const { parameter, ohms: old } = variables[j]!;
    change[j] = (old - ohms[parameter]!) / REFERENCE_OHMS;
  }
  const live = solved.sources.length;
  for (let m = 0; m < samples.count; m++) {
    if (!small.solve(samples, m, change)) return null;
    const { detRe, detIm } = small;
    valuesRe[live]![m] = detRe;
    valuesIm[live]![m] = detIm;
    for (let i = 0; i < live; i++) {
      small.transferOf(samples, m, i);
      valuesRe[i]![m] = small.re * detRe - small.im * detIm;
      valuesIm[i]![m] = small.re * detIm + small.im * detRe;
    }
  }
  const polynomials = tidied(valuesRe.map((re, i) => coefficientsFrom(circle, re, valuesIm[i]!)));
  return reproduces(solved, polynomials, change) ? polynomials : null;
}

/** Of a polynomial's largest coefficient: what rounding leaves where there is none. */
const ROUNDING = 1e-14;

/**
 * Cuts off the highest powers where none of the polynomials has more than rounding there, and brings the denominator's largest
 * coefficient to 1: a determinant may be of any size, and curves multiply four values of these polynomials.
 */
function tidied(polynomials: readonly Float64Array[]): Float64Array[] {
  const largest = polynomials.map(largestOf);
  let length = polynomials[0]!.length;
  while (length > 1 && polynomials.every((each, i) => Math.abs(each[length - 1]!) <= ROUNDING * largest[i]!)) length--;
  const scale = 1 / largest.at(-1)!;
  return polynomials.map((polynomial) => {
    const kept = polynomial.slice(0, length);
    for (let k = 0; k < length; k++) kept[k]! *= scale;
    return kept;
  });
}

function largestOf(values: Float64Array): number {
  let largest = 0;
  for (let k = 0; k < values.length; k++) largest = Math.max(largest, Math.abs(values[k]!));
  return largest;
}

function reproduces(solved: Solved, polynomials: readonly Float64Array[], change: Float64Array): boolean {
  const { small, checks } = solved;
  const live = solved.sources.length;
  for (let m = 0; m < checks.count; m++) {
    if (!small.solve(checks, m, change)) return false;
    const x = (2 * Math.PI * CHECK_HZ[m]!) / OMEGA0;
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

/** Every capacitor and inductance adds at most one power of s; parallel capacitors count once. */
function degreeBound(network: Network): number {
  const pairs = new Set<number>();
  let inductances = 0;
  for (const element of network.elements) {
    const { kind, a, b } = element;
    if (kind === "capacitor") pairs.add(Math.min(a, b) * network.nodeCount + Math.max(a, b));
    else if (kind === "branch" && element.henries > 0) inductances++;
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
