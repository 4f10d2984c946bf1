import type { Places } from "./classical-scaling.ts";

/** Pairs that a majorisation goes through in all: a thousand cells fifty times, in a third of a second. */
const PAIRS_IN_ALL = 2.5e7;
const MOST_STEPS = 1000;
/** Relative fall of the squared stress in one step below which nothing moves that could be seen. */
const SETTLED = 1e-8;

/** How badly a map keeps the distances. */
export interface Stress {
  /** Σ(d − δ)², what majorisation lessens. */
  readonly raw: number;
  /** √(Σ(d − δ)²/Σd²): stress-1 of J. B. Kruskal (Psychometrika 29, 1, 1964). */
  readonly stress1: number;
}

/**
 * Scaling by majorising a complicated function (J. de Leeuw, in Recent Developments in Statistics, 1977; I. Borg and P. J. F. Groenen,
 * Modern Multidimensional Scaling, ch. 8), all weights 1: each step goes twice as far as the Guttman transform B(X)·X/n, which never raises
 * the stress either and comes there in half the steps (J. de Leeuw and W. J. Heiser, in Multivariate Analysis V, 1980). It finds the nearest
 * minimum, which need not be the least there is.
 */
export class Smacof {
  readonly #distances: Float64Array;
  readonly #mostSteps: number;
  #places: Places;
  /** Of the places before the latest step. */
  #before: number | undefined;
  #steps = 0;
  #isSettled: boolean;

  /** @param distances of all pairs, as `pairDistances` gives them @param start places to begin from */
  constructor(distances: Float64Array, start: Places) {
    this.#distances = distances;
    this.#mostSteps = Math.min(MOST_STEPS, Math.ceil(PAIRS_IN_ALL / Math.max(1, distances.length)));
    this.#places = start;
    this.#isSettled = distances.every((distance) => distance === 0);
  }

  get places(): Places {
    return this.#places;
  }

  get stress(): Stress {
    return stressOf(this.#distances, this.#places);
  }

  get isOver(): boolean {
    return this.#isSettled;
  }

  get steps(): number {
    return this.#steps;
  }

  /** So many steps at most, by the number of pairs. */
  get mostSteps(): number {
    return this.#mostSteps;
  }

  step(): void {
    if (this.#isSettled) return;
    const { places, raw } = guttman(this.#distances, this.#places);
    this.#steps += 1;
    const before = this.#before;
    const isStill = before !== undefined && before - raw <= SETTLED * before;
    this.#isSettled = isStill || this.#steps >= this.#mostSteps;
    // Twice as far leaves the scale swinging about the right one; the last step is a whole one, which puts it there.
    this.#places = this.#isSettled ? places : places.map((value, k) => 2 * value - this.#places[k]!);
    this.#before = raw;
  }
}

/** B(X)·X/n, and Σ(d − δ)² of X on the way; where two places fall together, their pair pulls neither way. */
function guttman(distances: Float64Array, places: Places): { places: Places; raw: number } {
  const count = places.length / 2;
  const next = new Float64Array(places.length);
  let at = 0;
  let raw = 0;
  for (let i = 0; i < count; i++) {
    const [x, y] = [places[2 * i]!, places[2 * i + 1]!];
    let [sumX, sumY] = [0, 0];
    for (let j = i + 1; j < count; j++) {
      const dx = x - places[2 * j]!;
      const dy = y - places[2 * j + 1]!;
      const apart = Math.sqrt(dx * dx + dy * dy);
      const distance = distances[at++]!;
      raw += (apart - distance) * (apart - distance);
      const ratio = apart > 0 ? distance / apart : 0;
      sumX += ratio * dx;
      sumY += ratio * dy;
      next[2 * j]! -= ratio * dx;
      next[2 * j + 1]! -= ratio * dy;
    }
    next[2 * i]! += sumX;
    next[2 * i + 1]! += sumY;
  }
  for (let k = 0; k < next.length; k++) next[k]! /= count;
  return { places: next, raw };
}

/** Stress of places beside the distances that they are to have. */
export function stressOf(distances: Float64Array, places: Places): Stress {
  const count = places.length / 2;
  let [raw, squares, at] = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    const [x, y] = [places[2 * i]!, places[2 * i + 1]!];
    for (let j = i + 1; j < count; j++) {
      const dx = x - places[2 * j]!;
      const dy = y - places[2 * j + 1]!;
      const apart2 = dx * dx + dy * dy;
      const off = Math.sqrt(apart2) - distances[at++]!;
      raw += off * off;
      squares += apart2;
    }
  }
  return { raw, stress1: raw === 0 ? 0 : Math.sqrt(raw / squares) };
}
