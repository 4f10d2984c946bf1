import { BoundedMap } from "../bounded-map.ts";
import { DisjointSets } from "../disjoint-sets.ts";
import { relevantPart } from "./blocks.ts";
import { degreeBound, type Element, idealJoints, type Network, type Resistor } from "./elements.ts";
import { addDoubt, doubtOf, type Polynomial } from "./polynomials.ts";
import type { Rational } from "./rational.ts";
import { SampledNetwork } from "./sampled-network.ts";
import { OMEGA0, ONE_CIRCLE, type Sampling, THREE_CIRCLES } from "./sampling.ts";

/** The next where one is not enough. */
const SAMPLINGS = [ONE_CIRCLE, THREE_CIRCLES];
/** Pots at their ends in a sweep: some ten combinations. */
const MAX_KNOWN_JOINTS = 64;

/** One rational transfer function per source over a common denominator; null where a source never reaches the output. */
export interface RationalTransfers {
  /** Numerators of the sources' transfers. */
  readonly numerators: readonly (Polynomial | null)[];
  readonly denominator: Polynomial;
  readonly omega0: number;
}

/** Its value is 1. */
const ONE: Polynomial = { coefficients: Float64Array.of(1), rounding: Float64Array.of(0), noise: 0 };

/** The rational of all sources driven together with these weights; null where none reaches the output. */
export function weightedRational(transfers: RationalTransfers, weights: readonly number[]): Rational | null {
  const { denominator, omega0 } = transfers;
  const { length } = denominator.coefficients;
  const numerator = new Float64Array(length);
  const doubt = new Float64Array(length);
  let isSilent = true;
  for (const [source, polynomial] of transfers.numerators.entries()) {
    const weight = weights[source]!;
    if (!polynomial || weight === 0) continue;
    isSilent = false;
    for (let k = 0; k < length; k++) numerator[k]! += weight * polynomial.coefficients[k]!;
    addDoubt(doubt, polynomial, weight);
  }
  if (isSilent) return null;
  return {
    numerator,
    denominator: denominator.coefficients,
    omega0,
    doubt: { numerator: doubt, denominator: doubtOf(denominator) },
  };
}

type VariableResistor = Resistor & { readonly parameter: number };

function isVariable(element: Element): element is VariableResistor {
  return element.kind === "resistor" && element.parameter !== undefined;
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
  /** What the jack can see of the network; null where the output is tied to node 0. */
  readonly #relevant: Network | null;
  readonly #samplings: readonly Sampling[];
  readonly #solved = new Map<Sampling, SampledNetwork>();

  /** @param output the node whose voltage to node 0 is sought */
  constructor(network: Network, output: number) {
    this.#network = network;
    this.#output = output;
    this.#joints = idealJoints(network);
    this.#variables = network.elements.filter(isVariable);
    this.#relevant = this.#joints.find(output) === this.#joints.find(0) ? null : relevantPart(network, output);
    const powers = this.#relevant ? degreeBound(this.#relevant) : 0;
    this.#samplings = SAMPLINGS.filter(({ mostPowers }) => powers <= mostPowers);
  }

  /**
   * The transfer functions with the variable resistors at these values.
   * @param ohms value of each parameter; 0 is an ideal joint
   * @returns null where the polynomials do not reproduce the network, so that it must be solved frequency by frequency
   */
  transfersAt(ohms: ArrayLike<number>): RationalTransfers | null {
    const numerators = new Array<Polynomial | null>(this.#network.sourceCount).fill(null);
    if (!this.#relevant || this.#isShorted(ohms)) return { numerators, denominator: ONE, omega0: OMEGA0 };
    for (const sampling of this.#samplings) {
      const solved = this.#solvedAt(sampling, this.#relevant);
      const polynomials = solved.polynomialsAt(ohms);
      if (polynomials === "singular") return null;
      if (polynomials === "inexact") continue;
      for (const [i, { source }] of solved.sources.entries()) numerators[source] = polynomials[i]!;
      return { numerators, denominator: polynomials.at(-1)!, omega0: OMEGA0 };
    }
    return null;
  }

  #solvedAt(sampling: Sampling, relevant: Network): SampledNetwork {
    const solved = this.#solved.get(sampling) ?? new SampledNetwork(relevant, this.#output, sampling);
    this.#solved.set(sampling, solved);
    return solved;
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
