import { type BodyGuess, differentTables } from "../bodies/body-guesses.ts";
import { contactsAt, indexOfTable, type ListedTables, listedTables } from "../known/listed-tables.ts";
import type { ToldTouch } from "../touches.ts";
import { entropyOf, mostTelling, outcomesOf } from "./most-telling.ts";
import { type LikelyTable, type NextTouch, SITTING_SHARE, toldOnce, type Verdict } from "./verdict.ts";

/** Families alike, tables of a family alike; and a share of the belief for what the rows of lugs speak for. */
function priorsOf(tables: ListedTables, guesses: readonly BodyGuess[]): Float64Array {
  const prior = new Float64Array(tables.count);
  const left = guesses.length === 0 ? 1 : 1 - SITTING_SHARE;
  let first = 0;
  for (const count of tables.families) {
    prior.fill(left / (count * tables.families.length), first, first + count);
    first += count;
  }
  for (const { contacts, share } of differentTables(guesses))
    prior[indexOfTable(tables, contacts)]! += SITTING_SHARE * share;
  return prior;
}

const SHOWN = 5;
/** Belief in the one table that fits all beeps from which on it is told as found: else a misheard beep could as well have left it alone. Ours. */
const SURE = 0.9;

function fewestOf(counts: Uint16Array): number {
  let fewest = counts[0]!;
  for (const count of counts) if (count < fewest) fewest = count;
  return fewest;
}

function whereAtMost(counts: Uint16Array, most: number): number[] {
  const found: number[] = [];
  for (let at = 0; at < counts.length; at++) if (counts[at]! <= most) found.push(at);
  return found;
}

/** Those of the greatest weight, the greatest first, without sorting all. */
function greatest(all: readonly number[], weights: Float64Array, most: number): number[] {
  const best: number[] = [];
  for (const each of all) {
    if (best.length === most && weights[each]! <= weights[best[most - 1]!]!) continue;
    const at = best.findIndex((other) => weights[other]! < weights[each]!);
    best.splice(at < 0 ? best.length : at, 0, each);
    if (best.length > most) best.pop();
  }
  return best;
}

/** The known switches of few lugs: every contact table that they can have is weighed by itself, exactly. */
export class ListedSearch {
  readonly #tables: ListedTables;
  readonly #prior: Float64Array;
  /** Odds of a misheard touch. */
  readonly #odds: number;
  /** By the positions heard, as bits. */
  readonly #sums: Float64Array;

  constructor(lugs: number, positions: number, guesses: readonly BodyGuess[], errors: number) {
    this.#tables = listedTables(lugs, positions);
    this.#prior = priorsOf(this.#tables, guesses);
    this.#odds = errors / (1 - errors);
    this.#sums = new Float64Array(2 ** positions);
  }

  judge(touches: readonly ToldTouch[]): Verdict {
    const misheard = this.#misheard(touches);
    const least = fewestOf(misheard);
    const alive = whereAtMost(misheard, least);
    const doubtful =
      least === 0 ? [] : touches.filter((touch) => alive.some((table) => this.#contradicts(table, touch)));
    const again = doubtful.find((touch) => toldOnce(touches, touch));
    const weights = this.#weightsOf(misheard, least);
    const sum = weights.reduce((total, each) => total + each, 0);
    const isSure = weights[alive[0]!]! >= SURE * sum;
    const open = alive.length > 1 ? alive : isSure ? [] : whereAtMost(misheard, least + 1);
    return {
      misheard: least,
      contradictions: doubtful.map(({ index }) => index),
      tables: this.#likeliest(weights, sum, alive),
      ...this.#left(alive),
      done: alive.length === 1 && isSure && !again,
      next: again ? { a: again.a, b: again.b, outcomes: [], again: true } : this.#next(weights, open, touches.at(-1)),
    };
  }

  /** Belief by table, not yet shared out: each touch that it takes for misheard costs the odds of that. */
  #weightsOf(misheard: Uint16Array, least: number): Float64Array {
    const odds: number[] = [];
    return this.#prior.map((prior, table) => {
      const more = misheard[table]! - least;
      odds[more] ??= this.#odds ** more;
      return prior * odds[more]!;
    });
  }

  #contradicts(table: number, { a, b, on, off }: ToldTouch): boolean {
    const { pairs, masks } = this.#tables;
    const at = pairs.findIndex((pair) => pair.a === Math.min(a, b) && pair.b === Math.max(a, b));
    return (masks[table * pairs.length + at]! & (on | off)) !== on;
  }

  #misheard(touches: readonly ToldTouch[]): Uint16Array {
    const { pairs, masks, count } = this.#tables;
    const misheard = new Uint16Array(count);
    for (const { a, b, on, off } of touches) {
      const at = pairs.findIndex((pair) => pair.a === Math.min(a, b) && pair.b === Math.max(a, b));
      for (let table = 0; table < count; table++)
        if ((masks[table * pairs.length + at]! & (on | off)) !== on) misheard[table]!++;
    }
    return misheard;
  }

  #likeliest(weights: Float64Array, sum: number, alive: readonly number[]): LikelyTable[] {
    return greatest(alive, weights, SHOWN).map((table) => ({
      contacts: contactsAt(this.#tables, table),
      probability: weights[table]! / sum,
    }));
  }

  #left(alive: readonly number[]): { bits: number; count: number } {
    let [sum, weighed] = [0, 0];
    for (const table of alive) {
      const share = this.#prior[table]!;
      sum += share;
      weighed += share * Math.log2(share);
    }
    return { bits: Math.max(0, Math.log2(sum) - weighed / sum), count: alive.length };
  }

  #next(weights: Float64Array, open: readonly number[], last: ToldTouch | undefined): NextTouch | undefined {
    const telling = this.#tables.pairs.flatMap(({ a, b }, at) => {
      const shares = this.#sharesAt(at, weights, open);
      return shares.size === 1 ? [] : [{ a, b, shares, gain: entropyOf([...shares.values()]) }];
    });
    const best = mostTelling(telling, last);
    return best && { a: best.a, b: best.b, outcomes: outcomesOf(best.shares), again: false };
  }

  /** How much of the belief in what is open has a pair beep in which positions. */
  #sharesAt(pair: number, weights: Float64Array, open: readonly number[]): Map<number, number> {
    const { pairs, masks } = this.#tables;
    const sums = this.#sums.fill(0);
    for (const table of open) sums[masks[table * pairs.length + pair]!]! += weights[table]!;
    const sum = sums.reduce((total, each) => total + each, 0);
    return new Map([...sums.entries()].flatMap(([mask, each]) => (each > 0 ? [[mask, each / sum] as const] : [])));
  }
}
