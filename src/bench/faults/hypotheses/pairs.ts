import { isAtJoint } from "../edits/spare-joint.ts";
import type { Fault } from "../fault.ts";
import { isSameReading } from "./groups.ts";
import { byScore, type Hypothesis, score } from "./hypothesis.ts";
import type { Weigher } from "./weigher.ts";

/** Pairs grow from this many single faults that read differently. */
const SEEDS = 12;
/** Pairs weighed again about their own likeliest parts. */
const REFINED = 60;
/** Of the best pairs, so many are told with all that would read the same. */
const EXPANDED = 8;
const MOST_ALIKE = 14;
/** Faults that only the ear tells are paired with the best so many seeds, the likeliest by ear first. */
const HEARD_SEEDS = 4;
const HEARD_PARTNERS = 14;

/** Two faults of one wire, or of one part's value, exclude each other; and a model holds one poor joint. */
function compatible(first: Fault, second: Fault): boolean {
  if (isAtJoint(first) && isAtJoint(second)) return false;
  return !first.edits.some((one) =>
    second.edits.some((other) => {
      if ("wire" in one && "wire" in other) return one.wire === other.wire;
      return "part" in one && "part" in other && one.part === other.part;
    }),
  );
}

/** The single faults in front that read differently from each other, best first. */
function seedsOf(singles: readonly Hypothesis[], most: number): Hypothesis[] {
  const seeds: Hypothesis[] = [];
  for (const single of singles) {
    if (seeds.length >= most) break;
    if (single.faults.length === 1 && !seeds.some((seed) => isSameReading(seed, single))) seeds.push(single);
  }
  return seeds;
}

/** Pairs of single faults, searched where two of them can explain what one does not. */
export class Pairs {
  readonly #weigher: Weigher;
  readonly #singles: readonly Hypothesis[];
  /** The single faults in front that a meter sees and tells apart. */
  readonly seeds: readonly Hypothesis[];
  readonly #sound: Hypothesis;
  readonly #checkpoint: () => void;

  /** @param singles the sound guard and every single fault, best first, what was heard weighed */
  constructor(weigher: Weigher, singles: readonly Hypothesis[], checkpoint: () => void) {
    this.#weigher = weigher;
    this.#singles = singles;
    this.#sound = singles.find(({ faults }) => faults.length === 0)!;
    this.seeds = seedsOf(
      singles.filter((each) => !isSameReading(each, this.#sound)),
      SEEDS,
    );
    this.#checkpoint = checkpoint;
  }

  /** Pairs of faults that a meter sees, at most so many; the best of them with all that read the same. */
  seen(most: number): Hypothesis[] {
    const shown = this.#singles.filter(
      (each) => each.faults.length === 1 && each.faults[0]!.ohms === undefined && !isSameReading(each, this.#sound),
    );
    const count = Math.floor(most / Math.max(1, shown.length));
    const all = this.seeds.slice(0, count).flatMap((seed, index) => {
      this.#checkpoint();
      const done = new Set(this.seeds.slice(0, index).flatMap(({ faults }) => faults));
      return shown.flatMap((other) => (done.has(other.faults[0]!) ? [] : this.#both(seed, other)));
    });
    const best = all
      .sort(byScore)
      .slice(0, REFINED)
      .map((each) => this.#weigher.refined(each))
      .sort(byScore);
    return [...best, ...this.#alike(best, shown)];
  }

  /** A fault that a meter sees beside one that only the ear tells. */
  heard(): Hypothesis[] {
    const silent = this.#singles.filter((each) => each.faults.length === 1 && isSameReading(each, this.#sound));
    const byEar = [...silent].sort((a, b) => b.logPrior + b.logSymptoms - a.logPrior - a.logSymptoms);
    const partners = byEar.slice(0, HEARD_PARTNERS);
    return this.seeds
      .slice(0, HEARD_SEEDS)
      .flatMap((seed) =>
        this.#group(seed, this.#singles).flatMap((one) => partners.flatMap((other) => this.#both(one, other))),
      );
  }

  #both(one: Hypothesis, other: Hypothesis): Hypothesis[] {
    const [first, second] = [one.faults[0]!, other.faults[0]!];
    if (first === second || !compatible(first, second)) return [];
    return [this.#weigher.weigh([first, second])];
  }

  /** A fault and what reads the same by itself. */
  #group(seed: Hypothesis, among: readonly Hypothesis[]): Hypothesis[] {
    return among.filter((each) => each.faults.length === 1 && isSameReading(seed, each)).slice(0, MOST_ALIKE);
  }

  #alike(best: readonly Hypothesis[], shown: readonly Hypothesis[]): Hypothesis[] {
    const byFault = new Map(shown.map((each) => [each.faults[0]!, each]));
    const known = new Set(best.map(({ faults }) => keyOf(faults)));
    const leading = best.filter((each, index) => best.findIndex((other) => isSameReading(each, other)) === index);
    return leading.slice(0, EXPANDED).flatMap((pair) => {
      this.#checkpoint();
      const sides = pair.faults.map((fault) => {
        const single = byFault.get(fault);
        return single ? this.#group(single, shown) : [];
      });
      return sides[0]!.flatMap((one) =>
        sides[1]!.flatMap((other) => {
          const key = keyOf([...one.faults, ...other.faults]);
          if (known.has(key)) return [];
          known.add(key);
          return this.#both(one, other).map((each) =>
            isSameReading(each, pair) ? { ...each, evidence: pair.evidence, explains: pair.explains } : each,
          );
        }),
      );
    });
  }
}

function keyOf(faults: readonly Fault[]): string {
  return faults
    .map(({ kind, lugs }) => `${kind} ${lugs}`)
    .sort()
    .join();
}

/** What was heard must speak for a second fault that no meter sees by at least so much, in nats. */
const MIN_HEARD_GAIN = 1;

/** Pairs without those whose second fault shows in nothing that was told. */
export function withoutIdle(pairs: readonly Hypothesis[], singles: readonly Hypothesis[]): Hypothesis[] {
  const byFault = new Map(
    singles.flatMap((each) => (each.faults.length === 1 ? [[each.faults[0]!, each] as const] : [])),
  );
  return pairs.filter((pair) =>
    pair.faults.every((fault) => {
      const alone = byFault.get(fault);
      if (!alone || !isSameReading(alone, pair)) return true;
      return pair.logSymptoms > alone.logSymptoms + MIN_HEARD_GAIN && score(pair) > Number.NEGATIVE_INFINITY;
    }),
  );
}
