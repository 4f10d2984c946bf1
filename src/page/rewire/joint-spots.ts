import type { Point } from "../drawing/shapes.ts";

interface Curve {
  at(t: number): Point;
}

/** Drawing units from the middle of a sign to that of a lug, which stays seen, or of another sign. */
const FROM_LUG = 22;
const APART = 28;
const SAMPLES = 60;
/** A sign farther along than this would seem to be the other end's. */
const FARTHEST = 0.45;

const away = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);

/** How free a place is of others: 1 where it is as far from them as it should be. */
function room(point: Point, others: Iterable<Point>, apart: number): number {
  let least = 1;
  for (const other of others) least = Math.min(least, away(point, other) / apart);
  return least;
}

/**
 * Finds each joint's sign a place on its own wire, the nearest to its lug that is clear of all lugs and of the signs before it;
 * where a wire has none, the freest.
 */
export class JointSpots {
  readonly #lugs: readonly Point[];
  readonly #taken: Point[] = [];

  constructor(lugs: Iterable<Point>) {
    this.#lugs = [...lugs];
  }

  place(curve: Curve, isStart: boolean): Point {
    let best = curve.at(isStart ? 0 : 1);
    let most = Number.NEGATIVE_INFINITY;
    for (let sample = 1; sample <= SAMPLES && most < 1; sample++) {
      const along = (sample / SAMPLES) * FARTHEST;
      const point = curve.at(isStart ? along : 1 - along);
      const free = Math.min(room(point, this.#lugs, FROM_LUG), room(point, this.#taken, APART));
      if (free > most) [best, most] = [point, free];
    }
    this.#taken.push(best);
    return best;
  }
}
