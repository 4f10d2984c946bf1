import { DcSolver } from "./dc-solver.ts";
import type { MeterModel, MeterState } from "./meter-model.ts";
import type { Span } from "./resistors.ts";

/** Where the probes go, and the track whose wiper is swept for the highest reading, or −1. */
export interface Probes {
  readonly from: number;
  readonly to: number;
  readonly sweptTrack: number;
}

export const NOT_SWEPT = -1;
const COARSE_STEPS = 12;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

function spanOhms(span: Span, ohms: number, fraction: number): number {
  if (span === "whole" || ohms === Number.POSITIVE_INFINITY) return ohms;
  // A lifted no-load track leaves the wiper on lug 3 and lug 1 unconnected.
  if (fraction < 0) return span === "above" ? 0 : Number.POSITIVE_INFINITY;
  return (span === "below" ? fraction : 1 - fraction) * ohms;
}

/** Reads resistances of models that share one shape. Holds scratch memory only: every question is answered afresh. */
export class Ohmmeter {
  readonly #solver: DcSolver;
  readonly #value: Float64Array;
  /** Wiper fraction of the last highest reading that a sweep found. */
  lastFraction = 0;

  constructor(shape: MeterModel) {
    this.#solver = new DcSolver(shape.nodeCount, shape.parts.resistors.length);
    this.#value = new Float64Array(shape.parts.resistors.length);
  }

  /** Joins and loads the model in a state; `read` then answers for it. */
  prepare(model: MeterModel, state: MeterState, sweptTrack = NOT_SWEPT, fraction = 0): void {
    const solver = this.#solver;
    solver.clear();
    const { wireFrom, wireTo } = model;
    for (let i = 0; i < wireFrom.length; i++) if (wireFrom[i]! >= 0) solver.join(wireFrom[i]!, wireTo[i]!);
    for (const [a, b] of model.bridges) solver.join(a, b);
    for (let i = 0; i < model.contacts.length; i++) {
      for (const [a, b] of model.contacts[i]![state.positions[i]! - 1] ?? []) solver.join(a, b);
    }
    const { resistors } = model.parts;
    const value = this.#value;
    for (let i = 0; i < resistors.length; i++) {
      const { a, b, span, track } = resistors[i]!;
      const at = track === sweptTrack ? fraction : track < 0 ? 0 : state.fractions[track]!;
      value[i] = spanOhms(span, model.ohms[i]!, at);
      if (value[i] === 0) solver.join(a, b);
    }
    for (let i = 0; i < resistors.length; i++) {
      const ohms = value[i]!;
      if (ohms > 0 && ohms < Number.POSITIVE_INFINITY) solver.add(resistors[i]!.a, resistors[i]!.b, ohms, i);
    }
  }

  /** Ohms between two nodes of what was prepared; Infinity where open. */
  read(from: number, to: number): number {
    return this.#solver.resistance(from, to);
  }

  /** Adds d ln R / d ln r of the last reading to `into`, by resistor. */
  shares(ohms: number, into: Float64Array): void {
    this.#solver.shares(ohms, into);
  }

  /**
   * The reading of a model in a state: ohms, or Infinity where open. A swept reading is the highest finite one that the
   * wiper finds between the ends of its track, Infinity only where it finds none; the ohmmeter is left at that wiper.
   */
  measure(model: MeterModel, state: MeterState, probes: Probes, refinements: number): number {
    const { from, to, sweptTrack } = probes;
    if (sweptTrack === NOT_SWEPT) {
      this.prepare(model, state);
      return this.read(from, to);
    }
    const at = (fraction: number) => {
      this.prepare(model, state, sweptTrack, fraction);
      const ohms = this.read(from, to);
      return ohms === Number.POSITIVE_INFINITY ? -1 : ohms;
    };
    const fraction = highest(at, refinements);
    const ohms = at(fraction);
    this.lastFraction = fraction;
    return ohms < 0 ? Number.POSITIVE_INFINITY : ohms;
  }
}

/** Where between 0 and 1 a function of one hump is highest: a coarse look, then golden sections. */
function highest(at: (x: number) => number, refinements: number): number {
  let best = 0;
  let bestValue = Number.NEGATIVE_INFINITY;
  for (let step = 0; step <= COARSE_STEPS; step++) {
    const value = at(step / COARSE_STEPS);
    if (value > bestValue) [best, bestValue] = [step / COARSE_STEPS, value];
  }
  let [low, high] = [Math.max(0, best - 1 / COARSE_STEPS), Math.min(1, best + 1 / COARSE_STEPS)];
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [atLeft, atRight] = [at(left), at(right)];
  for (let round = 0; round < refinements; round++) {
    if (atLeft >= atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = at(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = at(right);
    }
  }
  const candidates: readonly (readonly [number, number])[] = [
    [best, bestValue],
    [left, atLeft],
    [right, atRight],
  ];
  return candidates.reduce((top, next) => (next[1] > top[1] ? next : top))[0];
}
