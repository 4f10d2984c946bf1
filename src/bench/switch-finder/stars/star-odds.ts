import { bitCount, type Heard } from "../heard.ts";
import { Picks } from "./picks.ts";
import { mayJoin, type StarState } from "./star-state.ts";

/** How likely two lugs are to beep somewhere. */
export interface PairOdds {
  readonly a: number;
  readonly b: number;
  readonly chance: number;
  /** Bits of the positions in which they may. */
  readonly open: number;
}

/** One lug that may be a pole's common, with the loose lugs that may be the throws it lacks. */
interface Centre {
  readonly lug: number;
  /** Its place among the loose lugs; undefined for a lug of a pole heard. */
  readonly loose: number | undefined;
  /** Which pole heard; undefined for a loose lug. */
  readonly star: number | undefined;
  readonly lacks: number;
  readonly open: number;
  readonly free: readonly number[];
}

const ROUNDS = 24;

function centresOf(heard: Heard, { loose, stars, unheard, family }: StarState): Centre[] {
  const free = (lug: number, open: number) =>
    [...loose.keys()].filter((at) => loose[at] !== lug && mayJoin(heard, loose[at]!, lug, open));
  const found = stars.flatMap(({ ends, open }, star) =>
    open === 0
      ? []
      : ends.map((lug) => ({ lug, loose: undefined, star, lacks: bitCount(open), open, free: free(lug, open) })),
  );
  if (unheard === 0) return found;
  const fresh = loose.map((lug, at) => ({
    lug,
    loose: at,
    star: undefined,
    lacks: family.throws,
    open: heard.all,
    free: free(lug, heard.all),
  }));
  return [...found, ...fresh];
}

/**
 * Chances of contacts by the fullest spread: every way to complete one pole has the product of its lugs' weights, and the weights
 * are scaled until every lug is in one pole (Sinkhorn and Knopp's scaling of 1967, for groups of lugs instead of pairs). They
 * choose what to touch next and nothing else.
 */
export class StarOdds {
  readonly #heard: Heard;
  readonly #state: StarState;
  readonly #centres: readonly Centre[];
  readonly #picks: Picks;
  /** Of loose lugs, and of poles heard. */
  readonly #weights: Float64Array;
  readonly #stars: Float64Array;

  constructor(heard: Heard, state: StarState) {
    this.#heard = heard;
    this.#state = state;
    this.#centres = centresOf(heard, state);
    this.#picks = new Picks(state.family.throws);
    this.#weights = new Float64Array(state.loose.length).fill(1 / Math.max(1, state.loose.length));
    this.#stars = new Float64Array(state.stars.length).fill(1);
    for (let round = 0; round < ROUNDS; round++) this.#scale();
  }

  #ownWeight({ loose, star }: Centre): number {
    return loose === undefined ? this.#stars[star!]! : this.#weights[loose]!;
  }

  #scale(): void {
    const poles = new Float64Array(this.#stars.length);
    for (const centre of this.#centres)
      if (centre.star !== undefined)
        poles[centre.star]! += this.#picks.from(this.#weights, centre.free).of(centre.lacks);
    for (const [star, sum] of poles.entries()) this.#stars[star] = sum > 0 ? 1 / sum : 0;
    const sums = new Float64Array(this.#weights.length);
    for (const centre of this.#centres) {
      const own = this.#ownWeight(centre);
      const picks = this.#picks.from(this.#weights, centre.free);
      if (centre.loose !== undefined) sums[centre.loose]! += own * picks.of(centre.lacks);
      for (const at of centre.free)
        sums[at]! += own * this.#weights[at]! * picks.without(this.#weights[at]!, centre.lacks - 1);
    }
    for (const [at, sum] of sums.entries()) if (sum > 0) this.#weights[at]! /= Math.sqrt(sum);
  }

  /** Every pair that could still beep and was not listened to in all positions. */
  pairs(): PairOdds[] {
    const { lugs, off } = this.#heard;
    const chances = new Map<number, { chance: number; open: number }>();
    for (const centre of this.#centres) {
      const own = this.#ownWeight(centre);
      const picks = this.#picks.from(this.#weights, centre.free);
      for (const at of centre.free) {
        const lug = this.#state.loose[at]!;
        const pair = Math.min(centre.lug, lug) * lugs + Math.max(centre.lug, lug);
        const chance = own * this.#weights[at]! * picks.without(this.#weights[at]!, centre.lacks - 1);
        const sum = Math.min(1, chance + (chances.get(pair)?.chance ?? 0));
        chances.set(pair, { chance: sum, open: centre.open & ~off[pair]! });
      }
    }
    return [...chances]
      .map(([pair, odds]) => ({ a: Math.floor(pair / lugs), b: pair % lugs, ...odds }))
      .filter(({ a, b }) => !this.#heard.isTold(a, b));
  }
}
