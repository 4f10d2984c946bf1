import type { Outline, Point } from "./outline.ts";
import { type Reach, reachOf } from "./reach.ts";

type Side = readonly [from: Point, to: Point];

const sidesOf = (outline: Outline): Side[] =>
  outline.map((from, index) => [from, outline[(index + 1) % outline.length]!]);

/** Whether it turns one way all round. */
export function isConvex(outline: Outline): boolean {
  const turns = sidesOf(outline).map(([a, b], index) => {
    const c = outline[(index + 2) % outline.length]!;
    return Math.sign((b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]));
  });
  return !(turns.includes(1) && turns.includes(-1));
}

/** How far a moves along a direction until it is past b, whichever way. */
function wayOut(a: Outline, b: Outline, [x, y]: Point): number {
  const along = (outline: Outline) => outline.map((point) => point[0] * x + point[1] * y);
  const [one, other] = [along(a), along(b)];
  return Math.min(Math.max(...one) - Math.min(...other), Math.max(...other) - Math.min(...one));
}

/** The shortest way that parts two convex outlines is square to a side of one of them (separating axes). */
function wayApart(a: Outline, b: Outline): number {
  const square = [...sidesOf(a), ...sidesOf(b)].flatMap(([from, to]): Point[] => {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    return length > 0 ? [[(to[1] - from[1]) / length, (from[0] - to[0]) / length]] : [];
  });
  return Math.max(0, Math.min(...square.map((direction) => wayOut(a, b, direction))));
}

/**
 * How far two outlines that overlap have to be moved apart, in metres: exact where both are convex; else at least so far, since a
 * point that lies so deep in the other has to come out.
 */
export function overlapOf(a: Outline, b: Outline): Reach {
  const [into, back] = [reachOf(a, b, "inside"), reachOf(b, a, "inside")];
  const deeper: Reach =
    into.depth >= back.depth ? into : { depth: back.depth, where: back.where && [back.where[1], back.where[0]] };
  if (!isConvex(a) || !isConvex(b)) return deeper;
  return { depth: wayApart(a, b), where: deeper.where ?? [a[0]!, a[0]!] };
}
