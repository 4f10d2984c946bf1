import type { Point } from "./point.ts";
import type { LugSpot } from "./shapes.ts";

export type Side = "back" | "front";

/**
 * A place of the guard as it lies on the page. From the back the neck is to the right and pots show their lugs down; the front
 * is the mirror image of it, as after turning the guard over like the page of a book.
 */
export function seenFrom(side: Side, point: Point): Point {
  return { x: (side === "front" ? -point.x : point.x) || 0, y: -point.y || 0 };
}

export interface SeenLug extends Point {
  readonly name: string;
  readonly label: string;
  /** Unit vector in which wires leave it; 0, 0 where they may leave any way. */
  readonly leave: Point;
  /** Unit vector from the lug to where its name stands best. */
  readonly beside: Point;
}

export function seenLug(side: Side, centre: Point, name: string, spot: LugSpot): SeenLug {
  const at = seenFrom(side, { x: centre.x + spot.x, y: centre.y + spot.y });
  return {
    name,
    label: spot.label,
    ...at,
    leave: seenFrom(side, spot.leave),
    beside: seenFrom(side, spot.beside),
  };
}

/** The lug with its wires leaving the other way, into the part. */
export function facingIn(lug: SeenLug): SeenLug {
  return { ...lug, leave: { x: -lug.leave.x, y: -lug.leave.y } };
}
