import { compactPencil } from "./branch-elimination.ts";
import type { Network } from "./elements.ts";
import { assemblePencil, type Pencil, REFERENCE_OHMS } from "./nodal-analysis.ts";
import { type FittedPolynomial, fittedPolynomial, type SampleCircle, sampleCircle } from "./sample-circle.ts";
import { type LiveSource, Samples, type Sought } from "./samples.ts";
import { SmallSystem } from "./small-system.ts";

/** Polynomials are in s/OMEGA0: the middle of the decades between a tone cap's corner and a coil's resonance, in rad/s. */
export const OMEGA0 = 2 * Math.PI * 5000;

/** At which frequencies a network is solved, and at which the polynomials are held to it before they are used. */
export interface Sampling {
  /** Beyond so many powers of s it is not worth trying. */
  readonly mostPowers: number;
  /** Radii in units of OMEGA0 of the circles in the plane of s, about its origin. */
  readonly radii: readonly number[];
  readonly checksHz: readonly number[];
}

/** Enough for up to a dozen reactive parts. */
export const ONE_CIRCLE: Sampling = { mostPowers: 16, radii: [1], checksHz: [20, 20_000] };
/**
 * For more of them: a coefficient comes out best on a circle of which it makes up a good part, and those of many powers do so on
 * circles far apart.
 */
export const THREE_CIRCLES: Sampling = {
  mostPowers: 64,
  radii: [0.03, 0.24, 1.92],
  checksHz: [20, 300, 1500, 4000, 8000, 20_000],
};

const CHECK_TOLERANCE = 1e-8;
/** Below this no transfer is worth checking: −240 dB. */
const CHECK_FLOOR = 1e-12;

interface Variable {
  readonly parameter: number;
  readonly ohms: number;
}

/** Numerators of the sources' transfers in the order of `sources`, then the denominator, in rising powers of s/OMEGA0. */
type Polynomials = readonly Float64Array[];

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

/** Every capacitor and inductance adds at most one power of s; parallel capacitors count once. */
export function degreeBound(network: Network): number {
  const pairs = new Set<number>();
  let inductances = 0;
  for (const element of network.elements) {
    const { a, b } = element;
    switch (element.kind) {
      case "capacitor":
        pairs.add(Math.min(a, b) * network.nodeCount + Math.max(a, b));
        break;
      case "branch":
        if (element.henries > 0) inductances++;
        break;
      case "resistor":
        break;
      default:
        element satisfies never;
    }
  }
  return pairs.size + inductances;
}

/** How many times its rounding a coefficient has to be to be one. */
const BEYOND_ROUNDING = 100;

/**
 * Cuts off the highest powers where none of the polynomials has more than rounding there, and brings the denominator's largest
 * coefficient to 1: a determinant may be of any size, and curves multiply four values of these polynomials.
 */
function tidied(fitted: readonly FittedPolynomial[]): Polynomials {
  const isRounding = ({ coefficients, rounding }: FittedPolynomial, k: number) =>
    Math.abs(coefficients[k]!) <= BEYOND_ROUNDING * rounding[k]!;
  let length = fitted[0]!.coefficients.length;
  while (length > 1 && fitted.every((each) => isRounding(each, length - 1))) length--;
  const scale = 1 / largestOf(fitted.at(-1)!.coefficients);
  return fitted.map(({ coefficients }) => {
    const kept = coefficients.slice(0, length);
    for (let k = 0; k < length; k++) kept[k]! *= scale;
    return kept;
  });
}

function largestOf(values: Float64Array): number {
  let largest = 0;
  for (let k = 0; k < values.length; k++) largest = Math.max(largest, Math.abs(values[k]!));
  return largest;
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
