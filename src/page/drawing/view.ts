import type { LugSpot, Point, TurnedLug } from "./shapes.ts";

export type Side = "back" | "front";

/**
 * A place of the guard as it lies on the page. From the back the neck is to the right and pots show their lugs down; the front
 * is the mirror image of it, as after turning the guard over like the page of a book.
 */
export function seenFrom(side: Side, point: Point): Point {
  return { x: side === "front" ? -point.x : point.x, y: -point.y };
}

export interface SeenLug extends Point {
  readonly name: string;
  readonly label: string;
  readonly out: -1 | 0 | 1;
  readonly beside: -1 | 1 | undefined;
  readonly turned: TurnedLug | undefined;
}

export function seenLug(side: Side, centre: Point, name: string, spot: LugSpot): SeenLug {
  const { x, y } = seenFrom(side, { x: centre.x + spot.x, y: centre.y + spot.y });
  const out = (-spot.out || 0) as -1 | 0 | 1;
  const beside = side === "front" && spot.beside ? (-spot.beside as -1 | 1) : spot.beside;
  const turned = spot.turned && {
    leave: seenFrom(side, spot.turned.leave),
    name: seenFrom(side, spot.turned.name),
  };
  return { name, label: spot.label, x, y, out, beside, turned };
}

/** The lug with its wires leaving the other way, into the part. */
export function facingIn(lug: SeenLug): SeenLug {
  const { turned } = lug;
  const out = -lug.out as -1 | 0 | 1;
  if (!turned) return { ...lug, out };
  return { ...lug, out, turned: { ...turned, leave: { x: -turned.leave.x, y: -turned.leave.y } } };
}
