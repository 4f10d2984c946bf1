import type { Point } from "./geometry/outline.ts";

/** A place in a photograph, in its own pixels: x to the right, y down. */
export interface Pixel {
  readonly x: number;
  readonly y: number;
}

/** Two places of the centre line in a photograph taken from the front and square above, the second nearer the neck. */
export interface Marks {
  readonly first: Pixel;
  readonly second: Pixel;
  /** Metres between them on the body. */
  readonly apart: number;
  /** Metres from the bridge to the first, towards the neck. */
  readonly fromBridge: number;
}

const spanOf = ({ first, second }: Marks) => Math.hypot(second.x - first.x, second.y - first.y);

export const metresPerPixel = (marks: Marks): number => marks.apart / spanOf(marks);

/**
 * Where a pixel lies in the guard's frame. Seen from the front, the neck to the right, its y grows downwards as the photograph's
 * does, so that a turn and a scale make one of the other.
 */
export function inGuardFrame(marks: Marks, { x, y }: Pixel): Point {
  const { first, second, fromBridge } = marks;
  const along = { x: (second.x - first.x) / spanOf(marks), y: (second.y - first.y) / spanOf(marks) };
  const off = { x: x - first.x, y: y - first.y };
  const scale = metresPerPixel(marks);
  return [fromBridge + scale * (off.x * along.x + off.y * along.y), scale * (off.y * along.x - off.x * along.y)];
}

/** How far marks and points may be off. */
export interface TraceErrors {
  /** Pixels by which each mark and each point may be off. */
  readonly pixels: number;
  /** Metres by which the distance between the marks may be. */
  readonly apart: number;
}

/**
 * Metres by which a line of pixels may be off, at most: each point by its own pixels and the first mark's; and the farther it is
 * from that mark, the more by the turn and the scale that both marks and their distance give.
 */
export function traceTolerance(marks: Marks, points: readonly Pixel[], errors: TraceErrors): number {
  const { first, apart } = marks;
  const farthest = Math.max(0, ...points.map(({ x, y }) => Math.hypot(x - first.x, y - first.y)));
  const own = 2 * errors.pixels * metresPerPixel(marks);
  const off = (2 * errors.pixels) / (spanOf(marks) - 2 * errors.pixels) + errors.apart / apart;
  return own + farthest * metresPerPixel(marks) * off;
}
