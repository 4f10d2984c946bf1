import type { Guard } from "../guard.ts";
import type { Patch } from "../variant.ts";
import type { Free } from "./free-parts.ts";
import type { Score, Scorer } from "./wish.ts";

/** Which of its values each free part takes, by index. */
export type Combination = readonly number[];

export interface Tried {
  readonly combination: Combination;
  readonly score: Score;
}

export function patchesOf(frees: readonly Free[], combination: Combination): Patch[] {
  return frees.flatMap((free, i) => free.patchesFor(free.values[combination[i]!]!));
}

interface TrialOptions {
  /** Called between trials; may throw to give the work up. */
  readonly checkpoint: () => void;
  /** How many combinations may be tried. */
  readonly most: number;
}

/** Scores combinations, each once. */
export class Trials {
  readonly scored: Tried[] = [];
  readonly #known = new Map<string, number>();
  readonly #guardOf: (combination: Combination) => Guard;
  readonly #score: Scorer;
  readonly #checkpoint: () => void;
  readonly #most: number;

  /** @param guardOf the guard with the values of a combination */
  constructor(guardOf: (combination: Combination) => Guard, score: Scorer, { checkpoint, most }: TrialOptions) {
    this.#guardOf = guardOf;
    this.#most = most;
    this.#score = score;
    this.#checkpoint = checkpoint;
  }

  get areSpent(): boolean {
    return this.count >= this.#most;
  }

  get count(): number {
    return this.#known.size;
  }

  /** @returns the cost; Infinity where the wish means nothing */
  costOf(combination: Combination): number {
    const key = combination.join();
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    this.#checkpoint();
    const score = this.#score(this.#guardOf(combination));
    const cost = score?.cost ?? Number.POSITIVE_INFINITY;
    this.#known.set(key, cost);
    if (score) this.scored.push({ combination, score });
    return cost;
  }
}
