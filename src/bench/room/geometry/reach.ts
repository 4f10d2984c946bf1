import { type Point as FlatPoint, Segment } from "@flatten-js/core";
import type { Outline, Point } from "./outline.ts";
import { crossingsOf, holds, metresOf, pointOf, type Shape, shapeOf } from "./polygon.ts";

/** How deep one outline's line reaches to the wrong side of another line. */
export interface Reach {
  /** Metres; nothing where it does not. */
  readonly depth: number;
  /** The deepest point and the nearest of the other line. */
  readonly where: readonly [Point, Point] | undefined;
}

/** Millimetres within which the deepest point is found: a tenth of what is promised of distances. */
const PRECISE_MM = 0.001;

const middleOf = ({ ps, pe }: Segment): FlatPoint => new Segment(ps, pe).middle();

/** A side in pieces, each of them wholly on one side of the other line. */
function piecesOf(side: Segment, other: Shape): Segment[] {
  const cuts = other.sides.flatMap((wall) => crossingsOf(side, wall));
  const along = (point: FlatPoint) => Math.hypot(point.x - side.ps.x, point.y - side.ps.y);
  const points = [side.ps, ...cuts.sort((a, b) => along(a) - along(b)), side.pe];
  return points.slice(1).flatMap((to, index) => {
    const from = points[index]!;
    return Math.hypot(to.x - from.x, to.y - from.y) > PRECISE_MM / 10 ? [new Segment(from, to)] : [];
  });
}

interface Depth {
  readonly at: FlatPoint;
  readonly depth: number;
  readonly wall: Segment;
}

/** Millimetres from a point to a side, by its foot on it. The library's own takes fifty times as long, in the innermost loop. */
function distanceTo({ x, y }: FlatPoint, { ps, pe }: Segment): number {
  const [alongX, alongY] = [pe.x - ps.x, pe.y - ps.y];
  const share = ((x - ps.x) * alongX + (y - ps.y) * alongY) / (alongX * alongX + alongY * alongY);
  const foot = Math.min(1, Math.max(0, share));
  return Math.hypot(x - ps.x - foot * alongX, y - ps.y - foot * alongY);
}

function depthAt(at: FlatPoint, { sides }: Shape): Depth {
  let [depth, wall] = [Number.POSITIVE_INFINITY, sides[0]!];
  for (const side of sides) {
    const distance = distanceTo(at, side);
    if (distance < depth) [depth, wall] = [distance, side];
  }
  return { at, depth, wall };
}

/**
 * The most that the depth can be between two points: the distance to one wall is convex along a line, so that no point between
 * is farther from that wall than the farther of the two ends, nor deeper than the wall is far.
 */
function mostBetween(a: Depth, b: Depth): number {
  const toWall = (one: Depth, other: Depth) => Math.max(one.depth, distanceTo(other.at, one.wall));
  return Math.min(toWall(a, b), toWall(b, a));
}

/** The deepest point of a piece, by halving what may hold one deeper than the deepest known. */
function deepestOf(piece: Segment, other: Shape, known: Depth | undefined): Depth | undefined {
  const ends = [depthAt(piece.ps, other), depthAt(piece.pe, other)] as const;
  const deeper = (a: Depth | undefined, b: Depth) => (a === undefined || b.depth > a.depth ? b : a);
  let deepest = ends.reduce(deeper, known);
  const open: (readonly [Depth, Depth])[] = [ends];
  for (let next = open.pop(); next; next = open.pop()) {
    const [a, b] = next;
    if (mostBetween(a, b) <= deepest!.depth + PRECISE_MM) continue;
    const middle = depthAt(middleOf(new Segment(a.at, b.at)), other);
    deepest = deeper(deepest, middle);
    open.push([a, middle], [middle, b]);
  }
  return deepest;
}

/** @param into whether the wrong side of the other line is its inside or its outside */
export function reachOf(outline: Outline, other: Outline, into: "inside" | "outside"): Reach {
  const walls = shapeOf(other);
  const isWrong = (piece: Segment) => holds(walls, middleOf(piece)) === (into === "inside");
  const pieces = shapeOf(outline).sides.flatMap((side) => piecesOf(side, walls).filter(isWrong));
  const deepest = pieces.reduce<Depth | undefined>((known, piece) => deepestOf(piece, walls, known), undefined);
  if (deepest === undefined) return { depth: 0, where: undefined };
  const nearest = deepest.at.distanceTo(deepest.wall)[1].pe;
  return { depth: metresOf(deepest.depth), where: [pointOf(deepest.at), pointOf(nearest)] };
}
