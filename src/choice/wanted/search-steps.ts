import type { Checkpoint } from "../../checkpoint.ts";
import type { Candidate } from "./candidate.ts";
import { Ledger } from "./ledger.ts";
import { rankOf, refine, sketch, tryValues } from "./refine.ts";
import { KnownShapes } from "./space/known-shapes.ts";
import { hasPlaces, pickupSteps, type Shape, switchSteps } from "./space/shapes.ts";
import type { WantedOptions, WantedQuestion } from "./wanted-question.ts";

/** A step that with its own values is further off than this, in squared steps, is not made the best by other values. A choice. */
const WORTH_REFINING = 4;
/** The best, to which switches are added. */
const STEPPED_FROM = 2;
/** Of all trials, what one shape may take whose values cannot all be tried. */
const LARGEST_SHARE = 0.25;
/** Of all trials, what the first sight of every guard's values may take, and how many of it one of them. */
const SKETCHED_SHARE = 0.5;
const LONGEST_SKETCH = 60;
/** Rounds of steps from the best; each adds one switch. */
const ROUNDS = 2;

export type Bounds = Required<WantedOptions>;

/** Of one customary guard, whose pickups' winds are small differences. */
export const TOLD_OF_ONE = 3;

/** A search under way: what was looked at, and what came of it. */
export class Wanted {
  readonly ledger: Ledger;
  readonly #question: WantedQuestion;
  readonly #shapes: KnownShapes;
  readonly #refined = new Set<Candidate>();
  readonly #checkpoint: Checkpoint;
  readonly #mostTrials: number;
  readonly #enough: number;
  trials = 0;
  stepped = 0;
  isEveryValueTried = true;

  constructor(question: WantedQuestion, { checkpoint }: Checkpoint, { mostShapes, mostTrials, enough }: Bounds) {
    this.#question = question;
    this.#enough = enough;
    this.ledger = new Ledger(question.wishes.length);
    this.#checkpoint = { checkpoint };
    this.#shapes = new KnownShapes(question, mostShapes);
    this.#mostTrials = mostTrials;
  }

  get shapes(): number {
    return this.#shapes.count;
  }

  /** Whether as many guards meet every wish as are enough. */
  get isEnough(): boolean {
    const met = [...this.ledger.metOf().values()].reduce((sum, count) => sum + Math.min(count, TOLD_OF_ONE), 0);
    return met >= this.#enough;
  }

  /** Tries a shape with its own values, once. @returns null where it cannot be built, or no more may be tried */
  look(shape: Shape): Candidate | null {
    return this.#shapes.candidateOf(shape, (candidate) => {
      this.#checkpoint.checkpoint();
      this.ledger.add(tryValues(candidate, candidate.own));
      this.trials++;
    });
  }

  /** From a shape to the best change of one pickup, until none gains. */
  descend(from: Candidate): void {
    for (let at = from; ; ) {
      const next = this.#bestStep(at, pickupSteps(at.shape, this.#question.pickups));
      if (!next || this.#shapes.isFull) return;
      at = next;
    }
  }

  #rank(candidate: Candidate): number {
    return rankOf(this.ledger.bestOf(candidate)!);
  }

  #bestStep(from: Candidate, shapes: readonly Shape[]): Candidate | undefined {
    const better = shapes
      .flatMap((shape) => this.look(shape) ?? [])
      .filter((candidate) => this.#rank(candidate) < this.#rank(from));
    return better.sort((a, b) => this.#rank(a) - this.#rank(b))[0];
  }

  /**
   * A first sight of the values of each customary guard, by its best pickups: which of them is the best by its own values says little of
   * what it can become.
   */
  sketch(): void {
    const seen = new Set<string>();
    const most = this.trials + SKETCHED_SHARE * this.#mostTrials;
    for (const { candidate } of this.ledger.ranked()) {
      if (seen.has(candidate.shape.from)) continue;
      seen.add(candidate.shape.from);
      const left = Math.min(LONGEST_SKETCH, most - this.trials);
      if (left <= 0 || this.isEnough) return;
      this.trials += sketch(candidate, { ...this.#checkpoint, most: left }, (each) => this.ledger.add(each));
    }
  }

  /** Tries values, the best shapes first, as long as combinations may be tried. */
  refine(candidates: readonly Candidate[]): void {
    for (const candidate of candidates) {
      if (this.#refined.has(candidate)) continue;
      const isTold =
        this.#enough < Number.POSITIVE_INFINITY && (this.ledger.metOf().get(candidate.shape.from) ?? 0) >= TOLD_OF_ONE;
      if (isTold) {
        this.isEveryValueTried = false;
        continue;
      }
      const left = this.#mostTrials - this.trials;
      if (left <= 1 || this.isEnough) {
        this.isEveryValueTried = false;
        return;
      }
      this.#refined.add(candidate);
      const most = candidate.combinations <= left ? left : Math.min(left, Math.ceil(this.#mostTrials * LARGEST_SHARE));
      const endsWhenMet = this.#enough < Number.POSITIVE_INFINITY;
      const effort = { ...this.#checkpoint, most, endsWhenMet };
      const { tried, isExhaustive } = refine(candidate, effort, (each) => this.ledger.add(each));
      // Its own values were tried before.
      this.trials += tried - 1;
      this.isEveryValueTried &&= isExhaustive;
    }
  }

  /** Adds switches to the best, round after round. */
  step(): void {
    for (let round = 0; round < ROUNDS; round++) {
      const best = this.ledger.ranked().slice(0, STEPPED_FROM);
      const before = this.shapes;
      const found = best.flatMap(({ candidate }) =>
        switchSteps(candidate.shape)
          .filter(({ plan }) => hasPlaces(plan, this.#question.wishes))
          .flatMap((shape) => this.look(shape) ?? []),
      );
      this.stepped += this.shapes - before;
      const worth = found.filter((candidate) => this.#rank(candidate) <= rankOf(best[0]!) + WORTH_REFINING);
      this.refine(worth.sort((a, b) => this.#rank(a) - this.#rank(b)));
      if (this.ledger.ranked()[0]?.candidate === best[0]?.candidate) return;
    }
  }
}
