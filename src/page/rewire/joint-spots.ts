import type { Point } from "../drawing/point.ts";

interface Curve {
  at(t: number): Point;
}

/** Drawing units from the middle of a sign to that of a lug, which stays seen, or of another sign. */
const FROM_LUG = 22;
const APART = 28;
const SAMPLES = 60;
/** Steps aside, for wires that are too short to hold their signs. */
const ASIDE = [0, 17, -17, 30, -30];
/** A sign farther along than this would seem to be the other end's. */
const FARTHEST = 0.45;

const away = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);

/** How free a place is of others: 1 where it is as far from them as it should be. */
function room(point: Point, others: Iterable<Point>, apart: number): number {
  let least = 1;
  for (const other of others) least = Math.min(least, away(point, other) / apart);
  return least;
}

/** Places from a wire's end on, those on the wire itself before those beside it. */
function* placesAlong(curve: Curve, isStart: boolean): Generator<Point> {
  const at = (along: number) => curve.at(isStart ? along : 1 - along);
  for (const aside of ASIDE)
    for (let sample = 1; sample <= SAMPLES; sample++) {
      const [before, here] = [sample - 1, sample].map((each) => at((each / SAMPLES) * FARTHEST)) as [Point, Point];
      const length = away(before, here) || 1;
      const [dx, dy] = [(here.x - before.x) / length, (here.y - before.y) / length];
      yield { x: here.x - dy * aside, y: here.y + dx * aside };
    }
}

/**
 * Finds each joint's sign a place on its own wire, or beside it where it is too short: the nearest to its lug that is clear of
 * all lugs and of the signs before it, or else the freest.
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
    for (const point of placesAlong(curve, isStart)) {
      const free = Math.min(room(point, this.#lugs, FROM_LUG), room(point, this.#taken, APART));
      if (free > most) [best, most] = [point, free];
      if (free === 1) break;
    }
    this.#taken.push(best);
    return best;
  }
}
