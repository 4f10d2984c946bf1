import { bitCount, type Heard } from "../heard.ts";
import { mayJoin, type StarState } from "./star-state.ts";

/** How likely two lugs are to beep somewhere, and what hearing them is worth. */
export interface PairOdds {
  readonly a: number;
  readonly b: number;
  readonly chance: number;
  /** Bits of the positions in which they may. */
  readonly open: number;
}

const ROUNDS = 6;
/** Keeps a guess of "never" from being taken for knowledge: only `starCount` decides. */
const LEAST = 1e-9;

/** Of `count` drawn from `all`, the chance that all fall on `free` of them; for reals, falling products. */
function allWithin(free: number, all: number, count: number): number {
  let chance = 1;
  for (let drawn = 0; drawn < count; drawn++) chance *= Math.max(0, free - drawn) / Math.max(1, all - drawn);
  return chance;
}

/**
 * Chances by mean field: every loose lug is spread over the open throws of the poles heard, the commons and the throws of those
 * unheard, rows and columns scaled in turn to what there is room for (Sinkhorn and Knopp 1967). They choose what to touch next
 * and nothing else.
 */
export class StarOdds {
  readonly #heard: Heard;
  readonly #state: StarState;
  /** chance[lug][star] that a loose lug is a throw of a star. */
  readonly #joins: readonly Float64Array[];
  readonly #isCommon: Float64Array;
  readonly #isThrow: Float64Array;
  /** For each star and each of its ends, the chance that this is the common. */
  readonly #ends: readonly (readonly number[])[];

  constructor(heard: Heard, state: StarState) {
    const { loose, stars } = state;
    this.#heard = heard;
    this.#state = state;
    this.#ends = stars.map(({ ends, open }) => this.#endChances(ends, open));
    this.#joins = loose.map(() => new Float64Array(stars.length));
    this.#isCommon = new Float64Array(loose.length).fill(1 / (state.family.throws + 1));
    this.#isThrow = new Float64Array(loose.length).fill(1 - 1 / (state.family.throws + 1));
    for (let round = 0; round < ROUNDS; round++) this.#spread();
  }

  #endChances(ends: readonly number[], open: number): number[] {
    if (ends.length === 1) return [1];
    const { loose } = this.#state;
    const weights = ends.map((end) => {
      const free = loose.filter((lug) => mayJoin(this.#heard, lug, end, open)).length;
      return allWithin(free, loose.length, bitCount(open)) + LEAST;
    });
    const sum = weights.reduce((total, weight) => total + weight, 0);
    return weights.map((weight) => weight / sum);
  }

  #mayMeet(u: number, v: number): boolean {
    const { loose } = this.#state;
    return u !== v && mayJoin(this.#heard, loose[u]!, loose[v]!, this.#heard.all);
  }

  /** How well a loose lug's silences go with its being a common, and a throw, of a pole unheard. */
  #silences(u: number): { common: number; way: number } {
    const { loose, family } = this.#state;
    let [freeThrows, throws, freeCommons, commons] = [0, 0, 0, 0];
    for (let v = 0; v < loose.length; v++) {
      if (v === u) continue;
      throws += this.#isThrow[v]!;
      commons += this.#isCommon[v]!;
      if (!this.#mayMeet(u, v)) continue;
      freeThrows += this.#isThrow[v]!;
      freeCommons += this.#isCommon[v]!;
    }
    return {
      common: allWithin(freeThrows, throws, family.throws) + LEAST,
      way: freeCommons / Math.max(LEAST, commons) + LEAST,
    };
  }

  #spread(): void {
    const { loose, stars, family, unheard } = this.#state;
    const columns = stars.length + 2;
    const room = [...stars.map(({ open }) => bitCount(open)), unheard, unheard * family.throws];
    const cells = loose.map((lug, u) => {
      const { common, way } = this.#silences(u);
      const joins = stars.map(({ ends, open }, star) =>
        ends.reduce((sum, end, at) => sum + (mayJoin(this.#heard, lug, end, open) ? this.#ends[star]![at]! : 0), LEAST),
      );
      return [...joins, common, way].map((weight, column) => weight * room[column]!);
    });
    for (let pass = 0; pass < ROUNDS; pass++) {
      for (let column = 0; column < columns; column++) {
        const sum = cells.reduce((total, row) => total + row[column]!, 0);
        if (sum > 0) for (const row of cells) row[column]! *= room[column]! / sum;
      }
      for (const row of cells) {
        const sum = row.reduce((total, cell) => total + cell, 0);
        if (sum > 0) for (let column = 0; column < columns; column++) row[column]! /= sum;
      }
    }
    for (const [u, row] of cells.entries()) {
      for (let star = 0; star < stars.length; star++) this.#joins[u]![star] = row[star]!;
      this.#isCommon[u] = row[stars.length]!;
      this.#isThrow[u] = row[stars.length + 1]!;
    }
  }

  #withStars(): PairOdds[] {
    const { loose, stars } = this.#state;
    return loose.flatMap((lug, u) =>
      stars.flatMap(({ ends, open }, star) => {
        const shares = ends.map((end, at) => (mayJoin(this.#heard, lug, end, open) ? this.#ends[star]![at]! : 0));
        const sum = shares.reduce((total, share) => total + share, 0);
        return ends.flatMap((end, at): PairOdds[] => {
          if (shares[at] === 0) return [];
          const chance = (this.#joins[u]![star]! * shares[at]!) / sum;
          return [{ a: end, b: lug, chance, open: open & ~this.#heard.off[end * this.#heard.lugs + lug]! }];
        });
      }),
    );
  }

  #amongLoose(): PairOdds[] {
    const { loose, family, unheard } = this.#state;
    if (unheard === 0) return [];
    const free = loose.map((_, u) => {
      let [throws, commons] = [LEAST, LEAST];
      for (let v = 0; v < loose.length; v++) {
        if (!this.#mayMeet(u, v)) continue;
        throws += this.#isThrow[v]!;
        commons += this.#isCommon[v]!;
      }
      return { throws, commons };
    });
    const oneWay = (u: number, v: number) => {
      const both = this.#isCommon[u]! * this.#isThrow[v]!;
      return ((both * family.throws) / free[u]!.throws + both / free[v]!.commons) / 2;
    };
    const pairs: PairOdds[] = [];
    for (let u = 0; u < loose.length; u++)
      for (let v = u + 1; v < loose.length; v++) {
        if (!this.#mayMeet(u, v)) continue;
        const chance = Math.min(1, oneWay(u, v) + oneWay(v, u));
        const [a, b] = [loose[u]!, loose[v]!];
        pairs.push({ a, b, chance, open: this.#heard.all & ~this.#heard.off[a * this.#heard.lugs + b]! });
      }
    return pairs;
  }

  /** Every pair that could still beep. */
  pairs(): PairOdds[] {
    return [...this.#withStars(), ...this.#amongLoose()].filter(({ a, b }) => !this.#heard.isTold(a, b));
  }
}
