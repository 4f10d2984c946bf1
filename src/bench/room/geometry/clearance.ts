import { gapBetween } from "./gap.ts";
import { extentGap, type Outline, type Point } from "./outline.ts";
import { overlapOf } from "./overlap.ts";
import { flatPoint, holds, shapeOf } from "./polygon.ts";
import { reachOf } from "./reach.ts";

/** How much room there is, and between which two points; below nothing, how much is missing. */
export interface Room {
  /** Metres. */
  readonly clearance: number;
  readonly where: readonly [Point, Point];
}

/** Metres below which two lines are taken to touch: the polygon library's own bound. */
const TOUCHING = 1e-9;

const isWithin = (inner: Outline, outer: Outline) => holds(shapeOf(outer), flatPoint(inner[0]!));

/**
 * Between a part and the wall of the cavity that it is to lie in. Below nothing it is how deep the part's line reaches into the
 * wood, or the wood's into the part, whichever is more.
 */
export function roomWithin(part: Outline, cavity: Outline): Room {
  const { apart, where } = gapBetween(part, cavity);
  if (apart > TOUCHING && isWithin(part, cavity)) return { clearance: apart, where };
  const [out, wood] = [reachOf(part, cavity, "outside"), reachOf(cavity, part, "inside")];
  if (out.depth >= wood.depth) return { clearance: 0 - out.depth, where: out.where ?? where };
  return { clearance: -wood.depth, where: wood.where ? [wood.where[1], wood.where[0]] : where };
}

/** Between two parts; below nothing, how far they have to be moved apart, or at least so far where one is not convex. */
export function roomBetween(a: Outline, b: Outline): Room {
  const { apart, where } = gapBetween(a, b);
  if (apart > TOUCHING && (extentGap(a, b) > 0 || !(isWithin(a, b) || isWithin(b, a))))
    return { clearance: apart, where };
  const overlap = overlapOf(a, b);
  return { clearance: 0 - overlap.depth, where: overlap.where ?? where };
}

/** Between a point and a cavity's wall: above nothing outside, in the wood; below nothing over the cavity. */
export function woodAt(point: Point, cavity: Outline): Room {
  const [apart, way] = flatPoint(point).distanceTo(shapeOf(cavity).polygon);
  const where = [point, [way.pe.x / 1000, way.pe.y / 1000]] as const;
  return { clearance: (holds(shapeOf(cavity), flatPoint(point)) ? -1 : 1) * (apart / 1000), where };
}
