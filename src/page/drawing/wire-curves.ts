import type { Point } from "./point.ts";
import type { SeenLug } from "./view.ts";

const MIN_PULL = 18;
const MAX_PULL = 110;

/** The way of a wire on the page. */
export interface Bow {
  readonly d: string;
  readonly middle: Point;
  /** Degrees, of the direction from start to end at the middle. */
  readonly angle: number;
  /** Its point at 0 for the start to 1 for the end. */
  at(t: number): Point;
}

function pullOf(from: SeenLug, to: SeenLug): number {
  const distance = Math.hypot(to.x - from.x, to.y - from.y);
  return Math.max(MIN_PULL, Math.min(MAX_PULL, distance * 0.35));
}

function control(lug: SeenLug, towards: SeenLug, pull: number): Point {
  const { x, y } = lug.leave;
  if (x !== 0 || y !== 0) return { x: lug.x + x * pull, y: lug.y + y * pull };
  const sign = Math.sign(towards.x - lug.x) || 1;
  return { x: lug.x + sign * pull * 0.6, y: lug.y };
}

const between = (a: Point, b: Point, t: number): Point => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });
const round = (value: number) => Math.round(value * 10) / 10;

/** De Casteljau's construction: a point of a Bézier curve, and two on the tangent there. */
function splitAt([a, b, c, d]: readonly [Point, Point, Point, Point], t: number) {
  const [p, q, r] = [between(a, b, t), between(b, c, t), between(c, d, t)];
  const [before, after] = [between(p, q, t), between(q, r, t)];
  return { point: between(before, after, t), before, after };
}

/** The freest curve from lug to lug, past nothing but what lies in the way: it leaves both as their wires leave. */
export function freeCurve(from: SeenLug, to: SeenLug): Bow {
  const pull = pullOf(from, to);
  const [c1, c2] = [control(from, to, pull), control(to, from, pull)];
  const numbers = [from.x, from.y, c1.x, c1.y, c2.x, c2.y, to.x, to.y].map(round);
  const { point, before, after } = splitAt([from, c1, c2, to], 0.5);
  return {
    d: `M${numbers[0]} ${numbers[1]}C${numbers.slice(2).join(" ")}`,
    middle: point,
    angle: (Math.atan2(after.y - before.y, after.x - before.x) * 180) / Math.PI,
    at: (t) => splitAt([from, c1, c2, to], t).point,
  };
}
