/** Numbers that a seed settles (mulberry32, public domain), so that a finding can be had again. */
export class Random {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** 0 ≤ x < 1. */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let t = this.#state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  }

  /** A whole number, 0 ≤ n < bound. */
  below(bound: number): number {
    return Math.floor(this.next() * bound);
  }

  pick<T>(choices: readonly T[]): T {
    return choices[this.below(choices.length)]!;
  }

  chance(probability: number): boolean {
    return this.next() < probability;
  }
}
