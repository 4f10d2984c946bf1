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
      ofPair.set(pair, [...(ofPair.get(pair) ?? []), touch]);
    }
    for (const [pair, told] of ofPair) this.#settle(Math.floor(pair / lugs), pair % lugs, told);
  }

  #settle(a: number, b: number, told: readonly Touch[]): void {
    const most = (mask: (touch: Touch) => number, other: (touch: Touch) => number) =>
      bitsOf(this.all).reduce((settled, bit) => {
        const votes = told.reduce((sum, touch) => sum + ((mask(touch) >> bit) & 1) - ((other(touch) >> bit) & 1), 0);
        return votes > 0 ? settled | (1 << bit) : settled;
      }, 0);
    const on = most(
      (touch) => touch.on,
      (touch) => touch.off,
    );
    const off = most(
      (touch) => touch.off,
      (touch) => touch.on,
    );
    for (const pair of [a * this.lugs + b, b * this.lugs + a]) {
      this.on[pair] = on;
      this.off[pair] = off;
    }
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
