import type { LugSpot, Point } from "./shapes.ts";

export type Side = "back" | "front";

/** Turning the guard over mirrors it along its length: what lay towards the treble side lies towards the bass side. */
export function seenFrom(side: Side, point: Point): Point {
  return side === "front" ? point : { x: point.x, y: -point.y };
}

export interface SeenLug extends Point {
  readonly name: string;
  readonly label: string;
  readonly out: -1 | 0 | 1;
  readonly beside: -1 | 1 | undefined;
}

export function seenLug(side: Side, centre: Point, name: string, spot: LugSpot): SeenLug {
  const { x, y } = seenFrom(side, { x: centre.x + spot.x, y: centre.y + spot.y });
  const out = side === "front" ? spot.out : ((-spot.out || 0) as -1 | 0 | 1);
  return { name, label: spot.label, x, y, out, beside: spot.beside };
}
