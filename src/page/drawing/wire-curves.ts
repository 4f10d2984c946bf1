import type { Point } from "./shapes.ts";
import type { SeenLug } from "./view.ts";

const MIN_PULL = 18;
const MAX_PULL = 110;

interface Bow {
  readonly d: string;
  readonly middle: Point;
  /** Degrees, of the direction from start to end at the middle. */
  readonly angle: number;
}

function pullOf(from: SeenLug, to: SeenLug): number {
  const distance = Math.hypot(to.x - from.x, to.y - from.y);
  return Math.max(MIN_PULL, Math.min(MAX_PULL, distance * 0.35));
}

/** A little to one side for wires that run side by side, so that they do not lie on each other. */
function control(lug: SeenLug, towards: SeenLug, pull: number, side: number): Point {
  if (lug.turned) {
    const { x, y } = lug.turned.leave;
    return { x: lug.x + x * pull - y * side, y: lug.y + y * pull + x * side };
  }
  if (lug.out !== 0) return { x: lug.x + side, y: lug.y + lug.out * pull };
  const sign = Math.sign(towards.x - lug.x) || 1;
  return { x: lug.x + sign * pull * 0.6, y: lug.y + side };
}

const mid = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
const round = (value: number) => Math.round(value * 10) / 10;

/** The curve of a wire that leaves both lugs the way their wires leave; its middle by de Casteljau's construction. */
export function wireCurve(from: SeenLug, to: SeenLug, index: number): Bow {
  const pull = pullOf(from, to);
  const side = ((index * 7) % 5) * 4 - 8;
  const [c1, c2] = [control(from, to, pull, side), control(to, from, pull, side)];
  const [p, q, r] = [mid(from, c1), mid(c1, c2), mid(c2, to)];
  const [left, right] = [mid(p, q), mid(q, r)];
  const numbers = [from.x, from.y, c1.x, c1.y, c2.x, c2.y, to.x, to.y].map(round);
  return {
    d: `M${numbers[0]} ${numbers[1]}C${numbers.slice(2).join(" ")}`,
    middle: mid(left, right),
    angle: (Math.atan2(right.y - left.y, right.x - left.x) * 180) / Math.PI,
  };
}
