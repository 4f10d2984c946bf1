import type { PowerCurve, Powers } from "./power-curve.ts";

/** A curve's powers over a list of frequencies, whose comparisons are those of the plain solution: it is asked where they are close. */
export class GridPowers {
  readonly #curve: PowerCurve;
  readonly #frequenciesHz: Float64Array;
  readonly #powers: Powers;

  constructor(curve: PowerCurve, frequenciesHz: Float64Array) {
    this.#curve = curve;
    this.#frequenciesHz = frequenciesHz;
    this.#powers = curve.sample(frequenciesHz);
  }

  at(index: number): number {
    return this.#powers.power[index]!;
  }

  offAt(index: number): number {
    return this.#powers.off[index]!;
  }

  /** Whether the power at one index is above another's, whatever either is off. */
  isSurelyAbove(one: number, other: number): boolean {
    const { power, off } = this.#powers;
    return power[one]! - off[one]! > power[other]! + off[other]!;
  }

  isAbove(one: number, other: number): boolean {
    if (this.isSurelyAbove(one, other)) return true;
    if (this.isSurelyAbove(other, one)) return false;
    this.#settle(one);
    this.#settle(other);
    return this.at(one) > this.at(other);
  }

  /** Whether the power at an index is a target or more; @param off of the target */
  reaches(index: number, target: number, off: number): boolean {
    const far = this.offAt(index) + off;
    if (Math.abs(this.at(index) - target) <= far) this.#settle(index);
    return this.at(index) >= target;
  }

  #settle(index: number): void {
    const { power, off } = this.#powers;
    if (off[index] === 0 || !this.#curve.exact) return;
    power[index] = this.#curve.exact().sample(this.#frequenciesHz.subarray(index, index + 1)).power[0]!;
    off[index] = 0;
  }
}
