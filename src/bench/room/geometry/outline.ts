import { turnedSpot } from "../../../build-file/bodies/spot.ts";

/** Metres, in the guard's frame: x from the bridge towards the neck, y from the bass side towards the treble side. */
export type Point = readonly [x: number, y: number];

/** A closed line through its points in turn; which way round does not matter. */
export type Outline = readonly Point[];

/** A polygon then lies within 0.004 mm of a pot's circle. */
const CIRCLE_SIDES = 96;

/** A circle as a polygon whose corners stand out as far as its sides fall short. @param diameter metres */
export function roundOutline(diameter: number): Outline {
  const radius = (diameter / 4) * (1 + 1 / Math.cos(Math.PI / CIRCLE_SIDES));
  return Array.from({ length: CIRCLE_SIDES }, (_, index) => {
    const angle = (2 * Math.PI * index) / CIRCLE_SIDES;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
}

/** A rectangle between two opposite corners. */
export function boxOutline([left, low]: Point, [right, high]: Point): Outline {
  return [
    [left, low],
    [right, low],
    [right, high],
    [left, high],
  ];
}

/** A rectangle about the middle. @param along, across metres: in x and in y */
export function middleBox(along: number, across: number): Outline {
  return boxOutline([-along / 2, -across / 2], [along / 2, across / 2]);
}

/** Where a part sits: its middle, and its turn counter-clockwise as seen from the back, in degrees. */
export interface Seat {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
}

export function seatedPoint([x, y]: Point, seat: Seat): Point {
  const turned = turnedSpot({ x, y }, seat.turn);
  return [seat.x + turned.x, seat.y + turned.y];
}

export const seated = (outline: Outline, seat: Seat): Outline => outline.map((point) => seatedPoint(point, seat));

/** The smallest upright rectangle that holds all points. */
export function extentOf(points: readonly Point[]): { readonly low: Point; readonly high: Point } {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { low: [Math.min(...xs), Math.min(...ys)], high: [Math.max(...xs), Math.max(...ys)] };
}

/** Metres between the upright rectangles about two outlines: the outlines are at least so far apart. */
export function extentGap(a: Outline, b: Outline): number {
  const [one, other] = [extentOf(a), extentOf(b)];
  const apart = (axis: 0 | 1) => Math.max(0, one.low[axis] - other.high[axis], other.low[axis] - one.high[axis]);
  return Math.hypot(apart(0), apart(1));
}
