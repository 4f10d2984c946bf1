/**
 * Weights of all ways to pick so many of some things: elementary symmetric polynomials of the things' own weights, by the
 * recurrence that adds one thing after the other.
 */
export class Picks {
  /** `[count]`: over all ways to pick so many, the product of what was picked. */
  readonly #all: Float64Array;
  readonly #without: Float64Array;

  /** @param most that are ever picked */
  constructor(most: number) {
    this.#all = new Float64Array(most + 1);
    this.#without = new Float64Array(most + 1);
  }

  from(weights: Float64Array, members: readonly number[]): this {
    const all = this.#all.fill(0);
    all[0] = 1;
    for (const member of members) {
      const weight = weights[member]!;
      for (let count = all.length - 1; count > 0; count--) all[count]! += weight * all[count - 1]!;
    }
    return this;
  }

  of(count: number): number {
    return this.#all[count]!;
  }

  /** The same without one member, of that weight. */
  without(weight: number, count: number): number {
    const without = this.#without;
    without[0] = 1;
    for (let each = 1; each <= count; each++)
      without[each] = Math.max(0, this.#all[each]! - weight * without[each - 1]!);
    return without[count]!;
  }
}
