import type { Segment } from "@flatten-js/core";
import type { Outline, Point } from "./outline.ts";
import { metresOf, pointOf, shapeOf } from "./polygon.ts";

/** How far apart two lines are, and the two points that are nearest to each other, the first on the first line. */
export interface Nearest {
  /** Metres, never below nothing. */
  readonly apart: number;
  readonly where: readonly [Point, Point];
}

/** Between the lines of two outlines, whichever lies in the other. */
export function gapBetween(a: Outline, b: Outline): Nearest {
  const [apart, between] = shapeOf(a).polygon.distanceTo(shapeOf(b).polygon) as [number, Segment];
  return { apart: metresOf(apart), where: [pointOf(between.ps), pointOf(between.pe)] };
}
