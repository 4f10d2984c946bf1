import { ComplexLdl } from "./complex-ldl.ts";
import type { Network } from "./elements.ts";
import { PortAdmittances } from "./port-admittances.ts";
import { type PortElements, portElements } from "./port-elements.ts";
import { fillSlopes, PortField } from "./port-field.ts";

/**
 * A network seen from one node against node 0: its impedance there, what reaches it from each source, and how every value of
 * every element moves both. With the voltages v and currents i that a unit current into the port makes, dZ/dY = −v² and
 * dZ/dz = i² (Tellegen's theorem; S. W. Director, R. A. Rohrer, The generalized adjoint network, IEEE CT-16, 1969).
 */
export class Port {
  readonly slotCount: number;
  readonly #elements: PortElements;
  readonly #ldl: ComplexLdl;
  readonly #y: PortAdmittances;
  readonly #fromPort: PortField;
  readonly #fromSource: PortField;
  #omega = 0;

  /** @param output not node 0, nor joined to it */
  constructor(network: Network, output: number) {
    this.#elements = portElements(network, output);
    this.slotCount = this.#elements.slotCount;
    this.#ldl = new ComplexLdl(this.#elements.nodes);
    this.#y = new PortAdmittances(this.#elements);
    this.#fromPort = new PortField(this.#elements);
    this.#fromSource = new PortField(this.#elements);
  }

  /** Solves at a frequency in Hz with these values of the slots; what follows is about it. */
  solveAt(hz: number, values: ArrayLike<number>): void {
    this.#omega = 2 * Math.PI * hz;
    this.#y.fill(this.#omega, values);
    this.#stamp();
    this.#ldl.factor();
    const { vRe, vIm } = this.#fromPort;
    vRe.fill(0);
    vIm.fill(0);
    vRe[this.#elements.port] = 1;
    this.#ldl.solve(vRe, vIm);
    this.#fromPort.fillCurrents(this.#elements, this.#y);
  }

  get impedanceRe(): number {
    return this.#fromPort.vRe[this.#elements.port]!;
  }

  get impedanceIm(): number {
    return this.#fromPort.vIm[this.#elements.port]!;
  }

  /** dZ / d(slot), for every slot. */
  impedanceSlopes(re: Float64Array, im: Float64Array): void {
    fillSlopes(this.#elements, this.#y, this.#omega, this.#fromPort, this.#fromPort, re, im);
  }

  /** The port's voltage for unit EMFs in these sources, each times its weight. */
  transfer(weights: ArrayLike<number>): readonly [re: number, im: number] {
    const { iRe, iIm } = this.#fromPort;
    const { source, count } = this.#elements;
    let [re, im] = [0, 0];
    for (let index = 0; index < count; index++) {
      const weight = source[index]! < 0 ? 0 : (weights[source[index]!] ?? 0);
      re -= weight * iRe[index]!;
      im -= weight * iIm[index]!;
    }
    return [re, im];
  }

  /** The port's voltage for an EMF in every element, by its index in the network, that drives current out of its terminal b. */
  transferOfEmfs(emfs: ArrayLike<number>): readonly [re: number, im: number] {
    const { iRe, iIm } = this.#fromPort;
    const { placeOf } = this.#elements;
    let [re, im] = [0, 0];
    for (let index = 0; index < placeOf.length; index++) {
      const place = placeOf[index]!;
      if (place < 0 || emfs[index] === 0) continue;
      re -= emfs[index]! * iRe[place]!;
      im -= emfs[index]! * iIm[place]!;
    }
    return [re, im];
  }

  /** The port's voltage for a unit current into a node: by reciprocity, the node's for one into the port. */
  transferFromNode(node: number): readonly [re: number, im: number] {
    const unknown = this.#elements.unknownOfNode[node]!;
    return unknown < 0 ? [0, 0] : [this.#fromPort.vRe[unknown]!, this.#fromPort.vIm[unknown]!];
  }

  /** d(transfer) / d(slot), for every slot. */
  transferSlopes(weights: ArrayLike<number>, re: Float64Array, im: Float64Array): void {
    const field = this.#fromSource;
    const { count, a, b } = this.#elements;
    const driven = this.#driven(weights);
    field.vRe.fill(0);
    field.vIm.fill(0);
    for (let index = 0; index < count; index++) {
      if (a[index]! >= 0) {
        field.vRe[a[index]!]! -= driven.re[index]!;
        field.vIm[a[index]!]! -= driven.im[index]!;
      }
      if (b[index]! >= 0) {
        field.vRe[b[index]!]! += driven.re[index]!;
        field.vIm[b[index]!]! += driven.im[index]!;
      }
    }
    this.#ldl.solve(field.vRe, field.vIm);
    field.fillCurrents(this.#elements, this.#y);
    for (let index = 0; index < count; index++) {
      field.iRe[index]! += driven.re[index]!;
      field.iIm[index]! += driven.im[index]!;
    }
    fillSlopes(this.#elements, this.#y, this.#omega, this.#fromPort, field, re, im);
  }

  /** Currents that the EMFs drive with all nodes held at 0; an EMF drives current out of b. */
  #driven(weights: ArrayLike<number>): { re: Float64Array; im: Float64Array } {
    const { count, source, mutual, partner } = this.#elements;
    const [re, im] = [new Float64Array(count), new Float64Array(count)];
    for (let index = 0; index < count; index++) {
      const weight = source[index]! < 0 ? 0 : (weights[source[index]!] ?? 0);
      if (weight === 0) continue;
      re[index]! += weight * this.#y.re[index]!;
      im[index]! += weight * this.#y.im[index]!;
      if (mutual[index]! < 0) continue;
      re[partner[index]!]! += weight * this.#y.crossRe[mutual[index]!]!;
      im[partner[index]!]! += weight * this.#y.crossIm[mutual[index]!]!;
    }
    return { re, im };
  }

  #stamp(): void {
    const { re, im } = this.#ldl;
    const { count, a, b, mutuals } = this.#elements;
    re.fill(0);
    im.fill(0);
    for (let index = 0; index < count; index++) {
      const p = a[index]!;
      const q = b[index]!;
      // What joins a node to itself carries nothing.
      if (p === q) continue;
      this.#add(p, p, this.#y.re[index]!, this.#y.im[index]!);
      this.#add(q, q, this.#y.re[index]!, this.#y.im[index]!);
      this.#add(p, q, -this.#y.re[index]!, -this.#y.im[index]!);
    }
    for (const [index, { first, second }] of mutuals.entries()) {
      const yRe = this.#y.crossRe[index]!;
      const yIm = this.#y.crossIm[index]!;
      this.#addTwice(a[first]!, a[second]!, yRe, yIm);
      this.#addTwice(b[first]!, b[second]!, yRe, yIm);
      this.#addTwice(a[first]!, b[second]!, -yRe, -yIm);
      this.#addTwice(b[first]!, a[second]!, -yRe, -yIm);
    }
  }

  /** Both halves of a symmetric stamp, which fall on one place where the nodes are the same. */
  #addTwice(row: number, column: number, yRe: number, yIm: number): void {
    this.#add(row, column, yRe, yIm);
    if (row === column) this.#add(row, column, yRe, yIm);
  }

  #add(row: number, column: number, yRe: number, yIm: number): void {
    if (row < 0 || column < 0) return;
    const { re, im, size } = this.#ldl;
    const at = row >= column ? row * size + column : column * size + row;
    re[at]! += yRe;
    im[at]! += yIm;
  }
}
