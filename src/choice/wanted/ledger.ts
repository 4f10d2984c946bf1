import type { Candidate } from "./candidate.ts";
import { rankOf, type Tried } from "./refine.ts";

/** What is worth keeping of everything that was tried. */
export class Ledger {
  readonly #byCandidate = new Map<Candidate, Tried>();
  readonly #meeting: (Tried | undefined)[];
  readonly #nearest: (Tried | undefined)[];

  /** @param wishes how many there are */
  constructor(wishes: number) {
    this.#meeting = Array.from({ length: wishes });
    this.#nearest = Array.from({ length: wishes });
  }

  add(tried: Tried): void {
    const best = this.#byCandidate.get(tried.candidate);
    if (!best || rankOf(tried) < rankOf(best)) this.#byCandidate.set(tried.candidate, tried);
    for (const [index, { met, cost }] of tried.outcome.wishes.entries()) {
      const meeting = this.#meeting[index];
      if (met && (!meeting || rankOf(tried) < rankOf(meeting))) this.#meeting[index] = tried;
      const nearest = this.#nearest[index];
      if (!nearest || cost < nearest.outcome.wishes[index]!.cost) this.#nearest[index] = tried;
    }
  }

  /** The best of a candidate so far. */
  bestOf(candidate: Candidate): Tried | undefined {
    return this.#byCandidate.get(candidate);
  }

  /** The best of every candidate, best first; among equals the one with fewer parts, then the one tried first. */
  ranked(): Tried[] {
    const parts = ({ candidate }: Tried) => Object.keys(candidate.build.parts).length;
    return [...this.#byCandidate.values()].sort((a, b) => rankOf(a) - rankOf(b) || parts(a) - parts(b));
  }

  /** How many guards of each start meet every wish. */
  metOf(): ReadonlyMap<string, number> {
    const counts = new Map<string, number>();
    for (const { candidate, outcome } of this.ranked()) {
      if (outcome.cost > 0) break;
      const { from } = candidate.shape;
      counts.set(from, (counts.get(from) ?? 0) + 1);
    }
    return counts;
  }

  /** Of all that meet a wish, the one that misses the least of the others. */
  meeting(wish: number): Tried | undefined {
    return this.#meeting[wish];
  }

  /** Whatever comes nearest to a wish. */
  nearest(wish: number): Tried | undefined {
    return this.#nearest[wish];
  }
}
