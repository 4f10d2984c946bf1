import type { Point } from "../point.ts";

export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const MARGIN = 30;
/** Nearer, a lug would be all that there is to see. */
const LEAST = { width: 300, height: 210 };
/** Of one joint: farther out, it could not be read beside the iron. What is longer runs out of the picture. */
const FARTHEST = { x: 230, y: 200 };

function around(middle: number, from: number, to: number, least: number, farthest: number): [number, number] {
  const [low, high] = [Math.max(from, middle - farthest), Math.min(to, middle + farthest)];
  const spare = Math.max(0, least - (high - low)) / 2;
  return [Math.round(low - spare), Math.round(high + spare)];
}

/** What a picture shows: all points with room about them, no farther than can be read from `middle`, where there is one. */
export function frameOf(points: readonly Point[], middle: Point | undefined): Frame {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const range = (values: readonly number[]) => [Math.min(...values) - MARGIN, Math.max(...values) + MARGIN] as const;
  const [left, right] = around(
    middle?.x ?? 0,
    ...range(xs),
    LEAST.width,
    middle ? FARTHEST.x : Number.POSITIVE_INFINITY,
  );
  const [top, bottom] = around(
    middle?.y ?? 0,
    ...range(ys),
    LEAST.height,
    middle ? FARTHEST.y : Number.POSITIVE_INFINITY,
  );
  return { x: left, y: top, width: right - left, height: bottom - top };
}

export function isIn({ x, y, width, height }: Frame, point: Point, beyond = 0): boolean {
  return (
    point.x >= x - beyond && point.x <= x + width + beyond && point.y >= y - beyond && point.y <= y + height + beyond
  );
}

/** Whether any of it is in the picture. */
export function touches(frame: Frame, box: Frame): boolean {
  return (
    box.x < frame.x + frame.width &&
    box.x + box.width > frame.x &&
    box.y < frame.y + frame.height &&
    box.y + box.height > frame.y
  );
}
