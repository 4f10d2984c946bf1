import type { PortAdmittances } from "./port-admittances.ts";
import { BRANCH, CAPACITOR, type PortElements } from "./port-elements.ts";
import { SHELF_CORNERS } from "./slots.ts";

/** Voltages and branch currents of one excitation; currents flow from a to b. */
export class PortField {
  readonly vRe: Float64Array;
  readonly vIm: Float64Array;
  readonly iRe: Float64Array;
  readonly iIm: Float64Array;
  /** Between the ends of every element. */
  readonly uRe: Float64Array;
  readonly uIm: Float64Array;

  constructor({ nodes, count }: PortElements) {
    this.vRe = new Float64Array(nodes);
    this.vIm = new Float64Array(nodes);
    this.iRe = new Float64Array(count);
    this.iIm = new Float64Array(count);
    this.uRe = new Float64Array(count);
    this.uIm = new Float64Array(count);
  }

  /** From the voltages, what they drive through every element. */
  fillCurrents({ count, a, b, mutual, partner }: PortElements, y: PortAdmittances): void {
    const { vRe, vIm, uRe, uIm, iRe, iIm } = this;
    for (let index = 0; index < count; index++) {
      const p = a[index]!;
      const q = b[index]!;
      uRe[index] = (p < 0 ? 0 : vRe[p]!) - (q < 0 ? 0 : vRe[q]!);
      uIm[index] = (p < 0 ? 0 : vIm[p]!) - (q < 0 ? 0 : vIm[q]!);
      iRe[index] = uRe[index]! * y.re[index]! - uIm[index]! * y.im[index]!;
      iIm[index] = uRe[index]! * y.im[index]! + uIm[index]! * y.re[index]!;
    }
    for (let index = 0; index < count; index++) {
      const which = mutual[index]!;
      if (which < 0) continue;
      const other = partner[index]!;
      iRe[index]! += uRe[other]! * y.crossRe[which]! - uIm[other]! * y.crossIm[which]!;
      iIm[index]! += uRe[other]! * y.crossIm[which]! + uIm[other]! * y.crossRe[which]!;
    }
  }
}

/**
 * How the product of two excitations moves with every slot: −u·w of an admittance, i·j of an impedance.
 * @param re filled, as is `im`
 */
export function fillSlopes(
  elements: PortElements,
  y: PortAdmittances,
  omega: number,
  one: PortField,
  two: PortField,
  re: Float64Array,
  im: Float64Array,
): void {
  const { count, kind, slot, source, mutuals } = elements;
  re.fill(0);
  im.fill(0);
  for (let index = 0; index < count; index++) {
    const at = slot[index]!;
    if (kind[index] === BRANCH) {
      const pRe = one.iRe[index]! * two.iRe[index]! - one.iIm[index]! * two.iIm[index]!;
      const pIm = one.iRe[index]! * two.iIm[index]! + one.iIm[index]! * two.iRe[index]!;
      re[at] = pRe;
      im[at] = pIm;
      re[at + 1] = -omega * pIm;
      im[at + 1] = omega * pRe;
      if (source[index]! < 0) continue;
      for (let shelf = 0; shelf < SHELF_CORNERS.length; shelf++) {
        const x = omega / SHELF_CORNERS[shelf]!;
        const fall = omega / (1 + x * x);
        re[at + 2 + shelf] = fall * (x * pRe - pIm);
        im[at + 2 + shelf] = fall * (x * pIm + pRe);
      }
      continue;
    }
    const pRe = one.uRe[index]! * two.uRe[index]! - one.uIm[index]! * two.uIm[index]!;
    const pIm = one.uRe[index]! * two.uIm[index]! + one.uIm[index]! * two.uRe[index]!;
    // d(1/R) = −dR/R², d(jωC) = jω·dC.
    const square = y.re[index]! * y.re[index]!;
    re[at] = kind[index] === CAPACITOR ? omega * pIm : square * pRe;
    im[at] = kind[index] === CAPACITOR ? -omega * pRe : square * pIm;
  }
  for (const { first, second, slot: at } of mutuals) {
    const pRe = product(one.iRe, one.iIm, first, two.iRe, two.iIm, second, -1);
    const qRe = product(one.iRe, one.iIm, second, two.iRe, two.iIm, first, -1);
    const pIm = product(one.iRe, one.iIm, first, two.iIm, two.iRe, second, 1);
    const qIm = product(one.iRe, one.iIm, second, two.iIm, two.iRe, first, 1);
    re[at] = -omega * (pIm + qIm);
    im[at] = omega * (pRe + qRe);
  }
}

/** p·r ± q·s, by index. */
function product(
  p: Float64Array,
  q: Float64Array,
  first: number,
  r: Float64Array,
  s: Float64Array,
  second: number,
  sign: number,
): number {
  return p[first]! * r[second]! + sign * q[first]! * s[second]!;
}
