import type { Fault } from "../fault.ts";
import { byScore, type Hypothesis } from "./hypothesis.ts";
import type { Weigher } from "./weigher.ts";

/** Hypotheses whose likeliest parts the readings are weighed at again; the first look is linear about nominal parts. */
const REFINED = 60;
/** Pairs grow from this many of the best single faults. */
export const PAIR_SEEDS = 12;

/** Every way in which a guard can be, sound or with the faults given, weighed. */
export class Hypotheses {
  readonly #weigher: Weigher;
  readonly #faults: readonly Fault[];
  readonly #checkpoint: () => void;

  constructor(weigher: Weigher, faults: readonly Fault[], checkpoint: () => void) {
    this.#weigher = weigher;
    this.#faults = faults;
    this.#checkpoint = checkpoint;
  }

  /** The sound guard and every single fault, best first; those in front weighed about their own likeliest parts. */
  singles(): Hypothesis[] {
    const all = [[], ...this.#faults.map((fault) => [fault])].map((faults) => this.#weigher.weigh(faults));
    all.sort(byScore);
    this.#checkpoint();
    return [...this.#refined(all.slice(0, REFINED)), ...all.slice(REFINED)].sort(byScore);
  }

  /** The best single faults each joined by any other, at most so many, the likeliest pairs first. */
  pairs(singles: readonly Hypothesis[], most: number): Hypothesis[] {
    const seedCount = Math.min(PAIR_SEEDS, Math.floor(most / this.#faults.length));
    const seeds = singles.filter(({ faults }) => faults.length === 1).slice(0, seedCount);
    const seen = new Set<Fault>();
    const all = seeds.flatMap(({ faults: [first] }) => {
      seen.add(first!);
      this.#checkpoint();
      return this.#faults
        .filter((second) => !seen.has(second) && compatible(first!, second))
        .map((second) => this.#weigher.weigh([first!, second]));
    });
    return this.#refined(all.sort(byScore).slice(0, REFINED)).sort(byScore);
  }

  #refined(hypotheses: readonly Hypothesis[]): Hypothesis[] {
    return hypotheses.map((each) => this.#weigher.refined(each));
  }
}

/** Two faults of one wire, or of one part's value, exclude each other. */
function compatible(first: Fault, second: Fault): boolean {
  return !first.edits.some((one) =>
    second.edits.some((other) => {
      if ("wire" in one && "wire" in other) return one.wire === other.wire;
      return "part" in one && "part" in other && one.part === other.part;
    }),
  );
}
