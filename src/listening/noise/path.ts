import type { Spot } from "../../build-file/bodies/spot.ts";

/** The way of a wire, from end to end, in metres on the guard. */
export type Path = readonly Spot[];

/**
 * What a path adds to the area of any loop that it is part of, m²: half the sum of x·dy − y·dx (shoelace), counter-clockwise
 * positive. The sum over a closed loop is its area, wherever the origin is.
 */
export function sweptArea(path: Path): number {
  let sum = 0;
  for (let index = 1; index < path.length; index++) {
    const [a, b] = [path[index - 1]!, path[index]!];
    sum += a.x * b.y - b.x * a.y;
  }
  return sum / 2;
}

export function lengthOf(path: Path): number {
  return path.slice(1).reduce((sum, { x, y }, index) => sum + Math.hypot(x - path[index]!.x, y - path[index]!.y), 0);
}

/**
 * Along the guard's edges, as a technician lays wire: lengthwise and across, round the corner that is nearer the treble edge,
 * where the controls are. The same way back.
 */
export function alongEdges(from: Spot, to: Spot): Path {
  if (from.x === to.x || from.y === to.y) return [from, to];
  return [from, from.y > to.y ? { x: to.x, y: from.y } : { x: from.x, y: to.y }, to];
}

/** Where a path comes nearest to a spot, and the path as far as there. */
export function upToNearest(path: Path, spot: Spot): Path {
  let best: { upTo: Path; distance: number } = { upTo: [path[0]!], distance: Number.POSITIVE_INFINITY };
  for (let index = 1; index < path.length; index++) {
    const [a, b] = [path[index - 1]!, path[index]!];
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const squared = dx * dx + dy * dy;
    const share = squared === 0 ? 0 : ((spot.x - a.x) * dx + (spot.y - a.y) * dy) / squared;
    const within = Math.min(1, Math.max(0, share));
    const point = { x: a.x + within * dx, y: a.y + within * dy };
    const distance = Math.hypot(spot.x - point.x, spot.y - point.y);
    if (distance < best.distance) best = { upTo: [...path.slice(0, index), point], distance };
  }
  return best.upTo;
}
