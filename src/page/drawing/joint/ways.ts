import type { Point } from "../shapes.ts";
import type { SeenLug } from "../view.ts";
import { wireCurve } from "../wire-curves.ts";

/** All that the pictures of joints know of how the guard's drawing lays wires. */
export interface Way {
  readonly d: string;
  /** Its point at 0 for the start to 1 for the end. */
  at(t: number): Point;
}

export function wayBetween(from: SeenLug, to: SeenLug, piece: number): Way {
  return wireCurve(from, to, piece);
}

/** Unit vector in which wires leave a lug. */
export function leaveOf({ out, turned }: SeenLug): Point {
  return turned?.leave ?? { x: 0, y: out };
}

/** A place off every part, to which wires may come from any side. */
export function freeLug(name: string, { x, y }: Point): SeenLug {
  return { name, label: "", x, y, out: 0, beside: undefined, turned: undefined };
}
