import type { Point } from "../point.ts";
import type { Bow } from "../wire-curves.ts";

const CUT = 14;
/** Near a lug, corners are kept tight, so that the line stays clear of it. */
const TIGHT_CUT = 5;
/** Points that a rounded corner is followed by. */
const ARC_POINTS = 4;

const between = (a: Point, b: Point, t: number): Point => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });
const apart = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);
const show = ({ x, y }: Point) => `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`;

/** Leaves out points on a straight line between their neighbours, and such as lie on the one before. */
export function withoutStraights(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const [index, point] of points.entries()) {
    const [before, next] = [kept.at(-1), points[index + 1]];
    if (before && apart(before, point) < 0.5) {
      if (!next) kept[kept.length - 1] = point;
      continue;
    }
    if (before && next) {
      const bend = (point.x - before.x) * (next.y - point.y) - (point.y - before.y) * (next.x - point.x);
      const forwards = (point.x - before.x) * (next.x - point.x) + (point.y - before.y) * (next.y - point.y);
      if (Math.abs(bend) < 1e-6 && forwards > 0) continue;
    }
    kept.push(point);
  }
  return kept;
}

/** A line of points along its length. */
class Line {
  readonly points: readonly Point[];
  readonly #lengths: readonly number[];

  constructor(points: readonly Point[]) {
    this.points = points;
    let length = 0;
    this.#lengths = points.map((point, index) => {
      if (index > 0) length += apart(points[index - 1]!, point);
      return length;
    });
  }

  /** The piece that holds a fraction of the length, and where in it. */
  #piece(t: number): { index: number; within: number } {
    const wanted = t * this.#lengths.at(-1)!;
    const found = this.#lengths.findIndex((length, at) => at > 0 && length >= wanted);
    const index = found < 1 ? Math.max(1, this.points.length - 1) : found;
    const [start, end] = [this.#lengths[index - 1]!, this.#lengths[index]!];
    return { index, within: end > start ? (wanted - start) / (end - start) : 0 };
  }

  at(t: number): Point {
    const { index, within } = this.#piece(t);
    return between(this.points[index - 1]!, this.points[index]!, within);
  }

  angleAt(t: number): number {
    const { index } = this.#piece(t);
    const [a, b] = [this.points[index - 1]!, this.points[index]!];
    return (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI;
  }
}

export interface RoundedBow extends Bow {
  /** Points close along it. */
  readonly points: readonly Point[];
}

/** A line through points with its corners rounded. @param isNearLug whether a corner is near a lug that the line must stay clear of */
export function roundedLine(corners: readonly Point[], isNearLug: (at: Point) => boolean): RoundedBow {
  const path = withoutStraights(corners);
  const points: Point[] = [path[0]!];
  let d = `M${show(path[0]!)}`;
  for (const [index, corner] of path.entries()) {
    const [before, after] = [path[index - 1], path[index + 1]];
    if (!before || !after) continue;
    const most = isNearLug(corner) ? TIGHT_CUT : CUT;
    const cut = Math.min(most, apart(before, corner) / 2, apart(corner, after) / 2);
    const start = between(corner, before, cut / apart(before, corner));
    const end = between(corner, after, cut / apart(corner, after));
    d += `L${show(start)}Q${show(corner)} ${show(end)}`;
    for (let step = 0; step <= ARC_POINTS; step++) {
      const t = step / ARC_POINTS;
      points.push(between(between(start, corner, t), between(corner, end, t), t));
    }
  }
  points.push(path.at(-1)!);
  d += `L${show(path.at(-1)!)}`;
  const line = new Line(points);
  return { d, points, middle: line.at(0.5), angle: line.angleAt(0.5), at: (t) => line.at(t) };
}
