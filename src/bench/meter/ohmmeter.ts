import { DcSolver } from "../../network/dc-solver.ts";
import type { MeterModel, MeterState } from "./meter-model.ts";
import type { Span } from "./resistors.ts";

/** Where the probes go, and the track whose wiper is swept for the highest reading, or −1. */
export interface Probes {
  readonly from: number;
  readonly to: number;
  readonly sweptTrack: number;
}

export const NOT_SWEPT = -1;
const COARSE_STEPS = 4;
/** How far inside an end of the track to look whether the hump's top is at the end itself. */
const NEAR_END = 1 / 64;
/** Nearer than this in the wiper's place, the highest reading is the same to a part in 10¹². */
const SETTLED = 1e-7;

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

/**
 * Where between 0 and 1 a function of one hump is highest: a coarse look, then parabolas through the best three points. Seen
 * from a fixed network the resistance over a wiper's place is a parabola or near one, so that few rounds settle it.
 */
function highest(at: (x: number) => number, refinements: number): number {
  const known = Array.from(
    { length: COARSE_STEPS + 1 },
    (_, step): Point => [step / COARSE_STEPS, at(step / COARSE_STEPS)],
  );
  const top = known.reduce((best, [, value], index) => (value > known[best]![1] ? index : best), 0);
  if (top === 0 || top === COARSE_STEPS) {
    const end = known[top]!;
    const inner = Math.abs(end[0] - NEAR_END);
    const beside: Point = [inner, at(inner)];
    if (beside[1] <= end[1]) return end[0];
    const far = known[top === 0 ? 1 : top - 1]!;
    return climb(at, top === 0 ? [end, beside, far] : [far, beside, end], refinements);
  }
  return climb(at, [known[top - 1]!, known[top]!, known[top + 1]!], refinements);
}

type Point = readonly [x: number, value: number];

/** Narrows three points, the middle one highest, about the top of the hump. */
function climb(at: (x: number) => number, bracket: readonly [Point, Point, Point], rounds: number): number {
  let [left, middle, right] = bracket;
  for (let round = 0; round < rounds && right[0] - left[0] > SETTLED; round++) {
    // Every third step halves the wider side, so that a lopsided hump cannot hold one end for ever.
    const x = round % 3 === 2 ? inWiderSide(left, middle, right) : vertexOf(left, middle, right);
    if (Math.abs(x - middle[0]) < SETTLED) break;
    const tried: Point = [x, at(x)];
    const [low, high] = x < middle[0] ? [tried, middle] : [middle, tried];
    if (high[1] >= low[1]) [left, middle] = [low, high];
    else [middle, right] = [low, high];
  }
  return middle[0];
}

function inWiderSide(left: Point, middle: Point, right: Point): number {
  return middle[0] - left[0] > right[0] - middle[0] ? (left[0] + middle[0]) / 2 : (middle[0] + right[0]) / 2;
}

/** The vertex of the parabola through three points, or a point of the wider side where they lie on a line. */
function vertexOf(left: Point, middle: Point, right: Point): number {
  const [dl, dr] = [middle[0] - left[0], middle[0] - right[0]];
  const [vl, vr] = [middle[1] - left[1], middle[1] - right[1]];
  const curvature = dl * vr - dr * vl;
  const x = middle[0] - (dl * dl * vr - dr * dr * vl) / (2 * curvature);
  return x > left[0] && x < right[0] ? x : inWiderSide(left, middle, right);
}
