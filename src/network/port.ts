import { ComplexLdl } from "./complex-ldl.ts";
import { idealJoints, isIdealJoint, type Network } from "./elements.ts";
import { SHELF_CORNERS, slotStarts } from "./slots.ts";

/** An element between two unknowns (−1: node 0), with where its slots begin. */
interface Placed {
  readonly kind: "resistor" | "capacitor" | "branch";
  readonly a: number;
  readonly b: number;
  readonly slot: number;
  readonly source: number;
}

/** Voltages and branch currents of one excitation; currents flow from a to b. */
class Field {
  readonly vRe: Float64Array;
  readonly vIm: Float64Array;
  readonly iRe: Float64Array;
  readonly iIm: Float64Array;

  constructor(nodes: number, elements: number) {
    this.vRe = new Float64Array(nodes);
    this.vIm = new Float64Array(nodes);
    this.iRe = new Float64Array(elements);
    this.iIm = new Float64Array(elements);
  }
}

/**
 * A network seen from one node against node 0: its impedance there, what reaches it from each source, and how every value of
 * every element moves both. With the voltages v and currents i that a unit current into the port makes, dZ/dY = −v² and
 * dZ/dz = i² (Tellegen's theorem; S. W. Director, R. A. Rohrer, The generalized adjoint network, IEEE CT-16, 1969).
 */
export class Port {
  readonly slotCount: number;
  readonly #placed: readonly Placed[];
  readonly #mutuals: readonly { readonly first: number; readonly second: number; readonly slot: number }[];
  readonly #mutualOf: Int32Array;
  readonly #port: number;
  readonly #ldl: ComplexLdl;
  readonly #yRe: Float64Array;
  readonly #yIm: Float64Array;
  readonly #crossRe: Float64Array;
  readonly #crossIm: Float64Array;
  readonly #fromPort: Field;
  readonly #fromSource: Field;
  #omega = 0;

  /** @param output not node 0, nor joined to it */
  constructor(network: Network, output: number) {
    const joints = idealJoints(network);
    const unknowns = new Map<number, number>([[joints.find(0), -1]]);
    const unknownOf = (node: number) => {
      const joint = joints.find(node);
      const known = unknowns.get(joint);
      if (known !== undefined) return known;
      unknowns.set(joint, unknowns.size - 1);
      return unknowns.size - 2;
    };
    this.#port = unknownOf(output);
    const starts = slotStarts(network);
    this.slotCount = starts.at(-1)!;
    const placeOf = new Int32Array(network.elements.length).fill(-1);
    const placed: Placed[] = [];
    for (const [index, element] of network.elements.entries()) {
      if (isIdealJoint(element)) continue;
      placeOf[index] = placed.length;
      const source = element.kind === "branch" ? (element.source ?? -1) : -1;
      const { kind, a, b } = element;
      placed.push({ kind, a: unknownOf(a), b: unknownOf(b), slot: starts[index]!, source });
    }
    this.#placed = placed;
    this.#mutuals = network.mutuals.map(({ first, second }, index) => ({
      first: placeOf[first]!,
      second: placeOf[second]!,
      slot: starts[network.elements.length + index]!,
    }));
    this.#mutualOf = new Int32Array(placed.length).fill(-1);
    for (const [index, { first, second }] of this.#mutuals.entries()) {
      this.#mutualOf[first] = index;
      this.#mutualOf[second] = index;
    }
    const nodes = unknowns.size - 1;
    this.#ldl = new ComplexLdl(nodes);
    this.#yRe = new Float64Array(placed.length);
    this.#yIm = new Float64Array(placed.length);
    this.#crossRe = new Float64Array(this.#mutuals.length);
    this.#crossIm = new Float64Array(this.#mutuals.length);
    this.#fromPort = new Field(nodes, placed.length);
    this.#fromSource = new Field(nodes, placed.length);
  }

  /** Solves at a frequency in Hz with these values of the slots; what follows is about it. */
  solveAt(hz: number, values: ArrayLike<number>): void {
    this.#omega = 2 * Math.PI * hz;
    this.#admit(values);
    this.#stamp();
    this.#ldl.factor();
    const { vRe, vIm } = this.#fromPort;
    vRe.fill(0);
    vIm.fill(0);
    vRe[this.#port] = 1;
    this.#ldl.solve(vRe, vIm);
    this.#currents(this.#fromPort);
  }

  get impedanceRe(): number {
    return this.#fromPort.vRe[this.#port]!;
  }

  get impedanceIm(): number {
    return this.#fromPort.vIm[this.#port]!;
  }

  /** dZ / d(slot), for every slot. */
  impedanceSlopes(re: Float64Array, im: Float64Array): void {
    this.#slopes(this.#fromPort, this.#fromPort, re, im);
  }

  /** The port's voltage for unit EMFs in these sources, each times its weight. */
  transfer(weights: ArrayLike<number>): readonly [re: number, im: number] {
    const { iRe, iIm } = this.#fromPort;
    let [re, im] = [0, 0];
    for (const [index, { source }] of this.#placed.entries()) {
      const weight = source < 0 ? 0 : (weights[source] ?? 0);
      if (weight === 0) continue;
      re -= weight * iRe[index]!;
      im -= weight * iIm[index]!;
    }
    return [re, im];
  }

  /** d(transfer) / d(slot), for every slot. */
  transferSlopes(weights: ArrayLike<number>, re: Float64Array, im: Float64Array): void {
    const field = this.#fromSource;
    field.vRe.fill(0);
    field.vIm.fill(0);
    this.#currentsOfSources(weights, field);
    for (const [index, { a, b }] of this.#placed.entries()) {
      const [iRe, iIm] = [field.iRe[index]!, field.iIm[index]!];
      if (iRe === 0 && iIm === 0) continue;
      if (a >= 0) {
        field.vRe[a]! -= iRe;
        field.vIm[a]! -= iIm;
      }
      if (b >= 0) {
        field.vRe[b]! += iRe;
        field.vIm[b]! += iIm;
      }
    }
    const driven = { re: field.iRe.slice(), im: field.iIm.slice() };
    this.#ldl.solve(field.vRe, field.vIm);
    this.#currents(field);
    for (let index = 0; index < driven.re.length; index++) {
      field.iRe[index]! += driven.re[index]!;
      field.iIm[index]! += driven.im[index]!;
    }
    this.#slopes(this.#fromPort, field, re, im);
  }

  /** Admittances of all elements; of two coupled branches, y11, y22 and y12 of their inverse. */
  #admit(values: ArrayLike<number>): void {
    const omega = this.#omega;
    for (const [index, element] of this.#placed.entries()) {
      const [zRe, zIm, isAdmittance] = this.#own(element, values, omega);
      const norm = zRe * zRe + zIm * zIm;
      this.#yRe[index] = isAdmittance ? zRe : zRe / norm;
      this.#yIm[index] = isAdmittance ? zIm : -zIm / norm;
    }
    for (const [index, { first, second, slot }] of this.#mutuals.entries()) {
      const [aRe, aIm] = this.#own(this.#placed[first]!, values, omega);
      const [bRe, bIm] = this.#own(this.#placed[second]!, values, omega);
      const m = omega * values[slot]!;
      const dRe = aRe * bRe - aIm * bIm + m * m;
      const dIm = aRe * bIm + aIm * bRe;
      const norm = dRe * dRe + dIm * dIm;
      const over = (re: number, im: number) => [(re * dRe + im * dIm) / norm, (im * dRe - re * dIm) / norm] as const;
      [this.#yRe[first], this.#yIm[first]] = over(bRe, bIm);
      [this.#yRe[second], this.#yIm[second]] = over(aRe, aIm);
      [this.#crossRe[index], this.#crossIm[index]] = over(0, -m);
    }
  }

  #own({ kind, slot, source }: Placed, values: ArrayLike<number>, omega: number): [number, number, boolean] {
    if (kind === "resistor") return [1 / values[slot]!, 0, true];
    if (kind === "capacitor") return [0, omega * values[slot]!, true];
    let [re, im] = [values[slot]!, omega * values[slot + 1]!];
    if (source >= 0)
      for (let shelf = 0; shelf < SHELF_CORNERS.length; shelf++) {
        const henries = values[slot + 2 + shelf]!;
        if (henries === 0) continue;
        const x = omega / SHELF_CORNERS[shelf]!;
        const fall = (omega * henries) / (1 + x * x);
        re += fall * x;
        im += fall;
      }
    return [re, im, false];
  }

  #stamp(): void {
    const { re, im, size } = this.#ldl;
    re.fill(0);
    im.fill(0);
    const add = (row: number, column: number, yRe: number, yIm: number) => {
      if (row < 0 || column < 0) return;
      const at = row >= column ? row * size + column : column * size + row;
      re[at]! += yRe;
      im[at]! += yIm;
    };
    for (const [index, { a, b }] of this.#placed.entries()) {
      const [yRe, yIm] = [this.#yRe[index]!, this.#yIm[index]!];
      add(a, a, yRe, yIm);
      add(b, b, yRe, yIm);
      if (a !== b) add(a, b, -yRe, -yIm);
      else if (a >= 0) add(a, a, -2 * yRe, -2 * yIm);
    }
    for (const [index, { first, second }] of this.#mutuals.entries()) {
      const [p, q] = [this.#placed[first]!, this.#placed[second]!];
      const [yRe, yIm] = [this.#crossRe[index]!, this.#crossIm[index]!];
      // Both halves of the symmetric stamp fall on one place where the two nodes are the same.
      for (const [row, column, sign] of [
        [p.a, q.a, 1],
        [p.b, q.b, 1],
        [p.a, q.b, -1],
        [p.b, q.a, -1],
      ] as const)
        add(row, column, (row === column ? 2 : 1) * sign * yRe, (row === column ? 2 : 1) * sign * yIm);
    }
  }

  /** Currents that a field's voltages drive through all elements. */
  #currents({ vRe, vIm, iRe, iIm }: Field): void {
    const across = (index: number): [number, number] => {
      const { a, b } = this.#placed[index]!;
      return [(a < 0 ? 0 : vRe[a]!) - (b < 0 ? 0 : vRe[b]!), (a < 0 ? 0 : vIm[a]!) - (b < 0 ? 0 : vIm[b]!)];
    };
    for (let index = 0; index < this.#placed.length; index++) {
      const [re, im] = across(index);
      const [yRe, yIm] = [this.#yRe[index]!, this.#yIm[index]!];
      iRe[index] = re * yRe - im * yIm;
      iIm[index] = re * yIm + im * yRe;
      const mutual = this.#mutualOf[index]!;
      if (mutual < 0) continue;
      const { first, second } = this.#mutuals[mutual]!;
      const [oRe, oIm] = across(first === index ? second : first);
      iRe[index]! += oRe * this.#crossRe[mutual]! - oIm * this.#crossIm[mutual]!;
      iIm[index]! += oRe * this.#crossIm[mutual]! + oIm * this.#crossRe[mutual]!;
    }
  }

  /** Currents that the EMFs drive with all nodes held at 0; an EMF drives current out of b. */
  #currentsOfSources(weights: ArrayLike<number>, { iRe, iIm }: Field): void {
    iRe.fill(0);
    iIm.fill(0);
    for (const [index, { source }] of this.#placed.entries()) {
      const weight = source < 0 ? 0 : (weights[source] ?? 0);
      if (weight === 0) continue;
      iRe[index]! += weight * this.#yRe[index]!;
      iIm[index]! += weight * this.#yIm[index]!;
      const mutual = this.#mutualOf[index]!;
      if (mutual < 0) continue;
      const { first, second } = this.#mutuals[mutual]!;
      const other = first === index ? second : first;
      iRe[other]! += weight * this.#crossRe[mutual]!;
      iIm[other]! += weight * this.#crossIm[mutual]!;
    }
  }

  /** How the product of two excitations moves with every slot: −v·w of an admittance, i·j of an impedance. */
  #slopes(one: Field, two: Field, re: Float64Array, im: Float64Array): void {
    const omega = this.#omega;
    re.fill(0);
    im.fill(0);
    for (const [index, { kind, a, b, slot, source }] of this.#placed.entries()) {
      if (kind === "branch") {
        const pRe = one.iRe[index]! * two.iRe[index]! - one.iIm[index]! * two.iIm[index]!;
        const pIm = one.iRe[index]! * two.iIm[index]! + one.iIm[index]! * two.iRe[index]!;
        re[slot] = pRe;
        im[slot] = pIm;
        re[slot + 1] = -omega * pIm;
        im[slot + 1] = omega * pRe;
        if (source >= 0)
          for (let shelf = 0; shelf < SHELF_CORNERS.length; shelf++) {
            const x = omega / SHELF_CORNERS[shelf]!;
            const fall = omega / (1 + x * x);
            re[slot + 2 + shelf] = fall * (x * pRe - pIm);
            im[slot + 2 + shelf] = fall * (x * pIm + pRe);
          }
        continue;
      }
      const at = (field: Field) =>
        [
          (a < 0 ? 0 : field.vRe[a]!) - (b < 0 ? 0 : field.vRe[b]!),
          (a < 0 ? 0 : field.vIm[a]!) - (b < 0 ? 0 : field.vIm[b]!),
        ] as const;
      const [uRe, uIm] = at(one);
      const [wRe, wIm] = at(two);
      const pRe = uRe * wRe - uIm * wIm;
      const pIm = uRe * wIm + uIm * wRe;
      if (kind === "capacitor") {
        re[slot] = omega * pIm;
        im[slot] = -omega * pRe;
      } else {
        // d(1/R) = −dR/R².
        const square = this.#yRe[index]! ** 2;
        re[slot] = square * pRe;
        im[slot] = square * pIm;
      }
    }
    for (const { first, second, slot } of this.#mutuals) {
      const cross = (p: number, q: number) =>
        [
          one.iRe[p]! * two.iRe[q]! - one.iIm[p]! * two.iIm[q]!,
          one.iRe[p]! * two.iIm[q]! + one.iIm[p]! * two.iRe[q]!,
        ] as const;
      const [aRe, aIm] = cross(first, second);
      const [bRe, bIm] = cross(second, first);
      re[slot] = -omega * (aIm + bIm);
      im[slot] = omega * (aRe + bRe);
    }
  }
}
