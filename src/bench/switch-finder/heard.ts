/** What one touch of two lugs told: in which positions it beeped, and in which it was listened for. */
export interface Touch {
  readonly a: number;
  readonly b: number;
  /** Bit p: it beeped in position p + 1. */
  readonly on: number;
  /** Bit p: it was silent in position p + 1. */
  readonly off: number;
}

export const bitCount = (mask: number): number => {
  let count = 0;
  for (let rest = mask; rest !== 0; rest &= rest - 1) count++;
  return count;
};

export const bitsOf = (mask: number): number[] =>
  Array.from({ length: 32 - Math.clz32(mask) }, (_, bit) => bit).filter((bit) => (mask >> bit) & 1);

/** All touches taken together, pair by pair: a position that was told both ways is taken as told by most, and by none at a tie. */
export class Heard {
  readonly lugs: number;
  /** A bit for each position. */
  readonly all: number;
  /** Both are by `a * lugs + b`, the same either way round. */
  readonly on: Int32Array;
  readonly off: Int32Array;

  constructor(lugs: number, positions: number, touches: readonly Touch[]) {
    this.lugs = lugs;
    this.all = 2 ** positions - 1;
    this.on = new Int32Array(lugs * lugs);
    this.off = new Int32Array(lugs * lugs);
    const ofPair = new Map<number, Touch[]>();
    for (const touch of touches) {
      const pair = Math.min(touch.a, touch.b) * lugs + Math.max(touch.a, touch.b);
      const told = ofPair.get(pair);
      if (told) told.push(touch);
      else ofPair.set(pair, [touch]);
    }
    for (const [pair, told] of ofPair) this.#settle(Math.floor(pair / lugs), pair % lugs, told);
  }

  #settle(a: number, b: number, told: readonly Touch[]): void {
    const { on, off } = told.length === 1 ? told[0]! : this.#byMost(told);
    for (const pair of [a * this.lugs + b, b * this.lugs + a]) {
      this.on[pair] = on;
      this.off[pair] = off;
    }
  }

  #byMost(told: readonly Touch[]): { on: number; off: number } {
    let [on, off] = [0, 0];
    for (const bit of bitsOf(this.all)) {
      const votes = told.reduce((sum, touch) => sum + ((touch.on >> bit) & 1) - ((touch.off >> bit) & 1), 0);
      if (votes > 0) on |= 1 << bit;
      if (votes < 0) off |= 1 << bit;
    }
    return { on, off };
  }

  /** Whether two lugs were listened to in every position. */
  isTold(a: number, b: number): boolean {
    const pair = a * this.lugs + b;
    return (this.on[pair]! | this.off[pair]!) === this.all;
  }

  /** Whether a contact table beeps as was told. */
  agrees(contacts: ArrayLike<number>): boolean {
    return this.on.every((on, pair) => (contacts[pair]! & (on | this.off[pair]!)) === on);
  }
}
