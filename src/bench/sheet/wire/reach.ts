import { layoutOf } from "../../../build-file/bodies/layout.ts";
import { lugPlaces } from "../../../build-file/bodies/lug-places.ts";
import { apart, type Spot } from "../../../build-file/bodies/spot.ts";
import type { Build } from "../../../build-file/schema.ts";
import { loosenessOf, partOf } from "../pieces/loose-ends.ts";

/** How far apart lugs lie, in metres. */
export interface Reach {
  /** From part to part along the guard's edges, as a technician measures; within a part, straight. */
  run(a: string, b: string): number;
  /** As the crow flies. */
  straight(a: string, b: string): number;
  /** Whether a bare end, or a leg in its sleeve, can go on from one to the other: near, and nothing else on the way. */
  isNextTo(a: string, b: string, by: "end" | "leg"): boolean;
}

/** Bare wire longer than this finds something to touch; a cap's leg, sleeved, is as long as it is (common practice, no source). */
const BARE_REACH = { end: 0.022, leg: 0.035 } as const;
/** A bare wire that passes another lug nearer than this touches it when it is bent. */
const BARE_CLEARANCE = 0.003;

/** How far a point lies from the straight line between two others. */
function offLine(point: Spot, a: Spot, b: Spot): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const squared = dx * dx + dy * dy;
  const along = squared === 0 ? 0 : ((point.x - a.x) * dx + (point.y - a.y) * dy) / squared;
  const within = Math.min(1, Math.max(0, along));
  return apart(point, { x: a.x + within * dx, y: a.y + within * dy });
}

/** Distances on a build's guard, from where its parts sit and what their bodies are. */
export function reachOn(build: Build): Reach {
  const parts = layoutOf(build);
  const lugs = lugPlaces(build, parts);
  const spot = (lug: string) => lugs.get(lug)!;
  const fixed = [...lugs].filter(([lug]) => loosenessOf(build, lug) === undefined);
  const straight = (a: string, b: string) => apart(spot(a), spot(b));
  return {
    straight,
    run: (a, b) => {
      const [partA, partB] = [partOf(a), partOf(b)];
      if (partA === partB) return straight(a, b);
      const [from, to] = [parts.get(partA)!, parts.get(partB)!];
      return Math.max(Math.abs(from.x - to.x) + Math.abs(from.y - to.y), straight(a, b));
    },
    isNextTo: (a, b, by) =>
      straight(a, b) <= BARE_REACH[by] &&
      fixed.every(([lug, at]) => lug === a || lug === b || offLine(at, spot(a), spot(b)) >= BARE_CLEARANCE),
  };
}
