import type { Places } from "./classical-scaling.ts";

/** Pairs that a majorisation goes through in all: a thousand cells a hundred times, in half a second. */
const PAIRS_IN_ALL = 5e7;
const MOST_STEPS = 300;
/** Relative fall of the squared stress in one step below which nothing moves that could be seen. */
const SETTLED = 1e-6;

/** How badly a map keeps the distances. */
export interface Stress {
  /** Σ(d − δ)², what majorisation lessens. */
  readonly raw: number;
  /** √(Σ(d − δ)²/Σd²): stress-1 of J. B. Kruskal (Psychometrika 29, 1, 1964). */
  readonly stress1: number;
}

/**
 * Scaling by majorising a complicated function (J. de Leeuw, in Recent Developments in Statistics, 1977; I. Borg and P. J. F. Groenen,
 * Modern Multidimensional Scaling, ch. 8), all weights 1: each step is the Guttman transform, X ← B(X)·X/n, which never raises the stress.
 * It finds the nearest minimum, which need not be the least there is.
 */
export class Smacof {
  readonly #distances: Float64Array;
  #places: Places;
  #stress: Stress;
  #steps = 0;
  #isSettled = false;

  /** @param distances of all pairs, as `pairDistances` gives them @param start places to begin from */
  constructor(distances: Float64Array, start: Places) {
    this.#distances = distances;
    this.#places = start;
    this.#stress = stressOf(distances, start);
    this.#isSettled = this.#stress.raw === 0 || start.length < 4;
  }

  get places(): Places {
    return this.#places;
  }

  get stress(): Stress {
    return this.#stress;
  }

  get isOver(): boolean {
    return this.#isSettled || this.#steps >= this.mostSteps;
  }

  /** So many steps at most, by the number of pairs. */
  get mostSteps(): number {
    return Math.max(1, Math.min(MOST_STEPS, Math.floor(PAIRS_IN_ALL / Math.max(1, this.#distances.length))));
  }

  get steps(): number {
    return this.#steps;
  }

  step(): void {
    if (this.isOver) return;
    const before = this.#stress.raw;
    this.#places = guttman(this.#distances, this.#places);
    this.#stress = stressOf(this.#distances, this.#places);
    this.#steps += 1;
    this.#isSettled = before - this.#stress.raw <= SETTLED * before;
  }
}

/** B(X)·X/n; where two places fall together, their pair pulls neither way. */
function guttman(distances: Float64Array, places: Places): Places {
  const count = places.length / 2;
  const next = new Float64Array(places.length);
  let at = 0;
  for (let i = 0; i < count; i++) {
    const [x, y] = [places[2 * i]!, places[2 * i + 1]!];
    let [sumX, sumY] = [0, 0];
    for (let j = i + 1; j < count; j++) {
      const [dx, dy] = [x - places[2 * j]!, y - places[2 * j + 1]!];
      const apart = Math.sqrt(dx * dx + dy * dy);
      const ratio = apart > 0 ? distances[at]! / apart : 0;
      at += 1;
      sumX += ratio * dx;
      sumY += ratio * dy;
      next[2 * j]! -= ratio * dx;
      next[2 * j + 1]! -= ratio * dy;
    }
    next[2 * i]! += sumX;
    next[2 * i + 1]! += sumY;
  }
  for (let k = 0; k < next.length; k++) next[k]! /= count;
  return next;
}

/** Stress of places beside the distances that they are to have. */
export function stressOf(distances: Float64Array, places: Places): Stress {
  const count = places.length / 2;
  let [raw, squares, at] = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    const [x, y] = [places[2 * i]!, places[2 * i + 1]!];
    for (let j = i + 1; j < count; j++) {
      const [dx, dy] = [x - places[2 * j]!, y - places[2 * j + 1]!];
      const apart2 = dx * dx + dy * dy;
      const off = Math.sqrt(apart2) - distances[at]!;
      at += 1;
      raw += off * off;
      squares += apart2;
    }
  }
  return { raw, stress1: raw === 0 ? 0 : Math.sqrt(raw / squares) };
}
