import { type Checkpoint, NO_CHECKPOINT } from "../../checkpoint.ts";
import { faultAt, PresolderError } from "../../errors.ts";
import { MAX_WANTED_SHAPES, MAX_WANTED_TRIALS } from "../../limits.ts";
import { Candidate, type Question } from "./candidate.ts";
import { Ledger } from "./ledger.ts";
import { rankOf, refine, sketch, type Tried, tryValues } from "./refine.ts";
import { missingPlaces } from "./space/missing-places.ts";
import { countOf, hasPlaces, pickupSteps, type Shape, shapesOf, switchSteps } from "./space/shapes.ts";

export interface WantedQuestion extends Question {
  readonly starts: readonly Shape[];
  /** What may sit in a place; where nothing is said, winds of what sits there. */
  readonly pickups: Readonly<Record<string, readonly string[]>>;
  /** Whether switches are added to the best guards. */
  readonly steps: boolean;
}

export interface WantedOptions {
  readonly mostShapes?: number;
  readonly mostTrials?: number;
  /** Guards that meet every wish, after which no more are looked for; without end, everything is tried. */
  readonly enough?: number;
}

export interface WantedResult {
  readonly ranked: readonly Tried[];
  readonly ledger: Ledger;
  /** Wirings with their pickups: all that there are of the guards begun with, tried, and left out since they lack a place wished for. */
  readonly shapes: { readonly all: number; readonly tried: number; readonly without: number; readonly stepped: number };
  /** Combinations of a shape and values that were tried. */
  readonly trials: number;
  /** Whether every shape of the guards begun with was tried with all values. */
  readonly exhaustive: boolean;
  /** Whether not everything was tried since there are guards that meet every wish. */
  readonly isMet: boolean;
}

/** Room for switches on top of shapes of which all were tried. */
const STEP_SHAPES = 80;
/** A step that with its own values is further off than this, in squared steps, is not made the best by other values. A choice. */
const WORTH_REFINING = 4;
/** From which descents over pickups begin, and to which switches are added, where not all can be tried. */
const DESCENTS_FROM = 4;
const STEPPED_FROM = 2;
/** Of all trials, what one shape may take whose values cannot all be tried. */
const LARGEST_SHARE = 0.25;
/** Of all trials, what the first sight of every guard's values may take, and how many of it one of them. */
const SKETCHED_SHARE = 0.5;
const LONGEST_SKETCH = 60;
/** Rounds of steps from the best; each adds one switch. */
const ROUNDS = 2;

type Bounds = Required<WantedOptions>;

/** Wirings, with their pickups, that all meet every wish and are enough to choose from. */
const ENOUGH = 5;
/** Of one customary guard, whose pickups' winds are small differences. */
export const TOLD_OF_ONE = 3;

class Wanted {
  readonly ledger: Ledger;
  readonly #question: WantedQuestion;
  readonly #known = new Map<string, Candidate | null>();
  readonly #refined = new Set<Candidate>();
  readonly #checkpoint: Checkpoint;
  readonly #mostShapes: number;
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
    this.#mostShapes = mostShapes;
    this.#mostTrials = mostTrials;
  }

  get shapes(): number {
    return this.#known.size;
  }

  get #isFull(): boolean {
    return this.shapes >= this.#mostShapes;
  }

  #candidateOf(shape: Shape): Candidate | null {
    try {
      return new Candidate(shape, this.#question);
    } catch (error) {
      // What cannot be wired with these pickups is none of the choices.
      if (error instanceof PresolderError && error.code === "BUILD_INVALID") return null;
      throw error;
    }
  }

  /** How many guards of each start meet every wish. */
  #metOf(): Map<string, number> {
    const counts = new Map<string, number>();
    for (const { candidate, outcome } of this.ledger.ranked()) {
      if (outcome.cost > 0) break;
      const { from } = candidate.shape;
      counts.set(from, (counts.get(from) ?? 0) + 1);
    }
    return counts;
  }

  /** Whether as many guards meet every wish as are enough. */
  get isEnough(): boolean {
    const met = [...this.#metOf().values()].reduce((sum, count) => sum + Math.min(count, TOLD_OF_ONE), 0);
    return met >= this.#enough;
  }

  /** Tries a shape with its own values, once. @returns null where it cannot be built, or no more may be tried */
  look(shape: Shape): Candidate | null {
    const key = JSON.stringify(shape.plan);
    const known = this.#known.get(key);
    if (known !== undefined || this.#isFull) return known ?? null;
    this.#checkpoint.checkpoint();
    const candidate = this.#candidateOf(shape);
    this.#known.set(key, candidate);
    if (candidate) {
      this.ledger.add(tryValues(candidate, candidate.own));
      this.trials++;
    }
    return candidate;
  }

  /** From a shape to the best change of one pickup, until none gains. */
  descend(from: Candidate): void {
    for (let at = from; ; ) {
      const next = this.#bestStep(at, pickupSteps(at.shape, this.#question.pickups));
      if (!next || this.#isFull) return;
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
        this.#enough < Number.POSITIVE_INFINITY && (this.#metOf().get(candidate.shape.from) ?? 0) >= TOLD_OF_ONE;
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

/**
 * Guards that come nearest to what is wished for: every wiring and pickup with its own values, the best of them with other values,
 * and the best of those with a switch more.
 * @throws PresolderError REQUEST_INVALID where no guard that may be tried can be built
 */
export function searchWanted(
  question: WantedQuestion,
  { checkpoint }: Checkpoint = NO_CHECKPOINT,
  { mostShapes = MAX_WANTED_SHAPES, mostTrials = MAX_WANTED_TRIALS, enough = ENOUGH }: WantedOptions = {},
): WantedResult {
  const starts = question.starts.filter(({ plan }) => hasPlaces(plan, question.wishes));
  if (starts.length === 0) throw faultAt("REQUEST_INVALID", "starts", missingPlaces(question.starts, question.wishes));
  const all = starts.reduce((count, start) => count + countOf(start, question.pickups), 0);
  const isAll = all <= mostShapes;
  const room = mostShapes + (isAll ? STEP_SHAPES : 0);
  const wanted = new Wanted(question, { checkpoint }, { mostShapes: room, mostTrials, enough });
  for (const start of starts) {
    if (isAll) for (const shape of shapesOf(start, question.pickups)) wanted.look(shape);
    else wanted.look(shapesOf(start, question.pickups)[0]!);
  }
  if (!isAll) for (const { candidate } of wanted.ledger.ranked().slice(0, DESCENTS_FROM)) wanted.descend(candidate);
  const looked = wanted.shapes;
  if (!isAll) wanted.sketch();
  wanted.refine(wanted.ledger.ranked().map(({ candidate }) => candidate));
  const exhaustive = isAll && wanted.isEveryValueTried;
  const isMet = !exhaustive && (wanted.ledger.ranked()[0]?.outcome.cost ?? 1) === 0;
  if (question.steps && !isMet) wanted.step();
  const ranked = wanted.ledger.ranked();
  if (ranked.length === 0) throw faultAt("REQUEST_INVALID", "starts", "none of them can be wired with these pickups");
  return {
    ranked,
    ledger: wanted.ledger,
    shapes: { all, tried: looked, without: question.starts.length - starts.length, stepped: wanted.stepped },
    trials: wanted.trials,
    exhaustive,
    isMet,
  };
}
