import type { NextTouch } from "./verdict.ts";

/** Worth of leaving one probe where it is: so much less may be learnt for it. Ours. */
const PROBE_STAYS = 1.3;

interface Telling {
  readonly a: number;
  readonly b: number;
  /** Bits that it tells: what its answer is worth, since a table answers in one way only. */
  readonly gain: number;
}

/** The touch that tells most; where others tell nearly as much, one for which a probe stays where it is. */
export function mostTelling<Pair extends Telling>(
  pairs: readonly Pair[],
  last: { readonly a: number; readonly b: number } | undefined,
): Pair | undefined {
  const worth = ({ a, b, gain }: Pair) => {
    const stays = last && (a === last.a || a === last.b || b === last.a || b === last.b);
    return stays ? gain * PROBE_STAYS : gain;
  };
  let [best, most] = [pairs[0], -1];
  for (const pair of pairs) {
    const own = worth(pair);
    // Rounding must not choose between equals: one question has one answer everywhere.
    if (own > most + 1e-9) [best, most] = [pair, own];
  }
  return best;
}

/** Bits. @param shares that make 1 */
export function entropyOf(shares: readonly number[]): number {
  return Math.max(
    0,
    shares.reduce((bits, share) => (share > 0 ? bits - share * Math.log2(share) : bits), 0),
  );
}

export function outcomesOf(shares: ReadonlyMap<number, number>): NextTouch["outcomes"] {
  return [...shares].map(([on, share]) => ({ on, share })).sort((a, b) => b.share - a.share);
}
