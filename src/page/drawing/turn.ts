import type { Point } from "./point.ts";
import type { Shape } from "./shapes.ts";

const round = (value: number) => Math.round(value * 1000) / 1000 || 0;

/** Counter-clockwise where y points up, by degrees. */
export function turned({ x, y }: Point, degrees: number): Point {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: round(x * cos - y * sin), y: round(x * sin + y * cos) };
}

/** A shape turned about its middle, in a box that holds it. */
export function turnedShape(shape: Shape, degrees: number): Shape {
  if (degrees === 0) return shape;
  const half = shape.width / 2;
  const corners = [-half, half].flatMap((x) => [-shape.up, shape.down].map((y) => turned({ x, y }, degrees)));
  return {
    width: 2 * Math.max(...corners.map(({ x }) => Math.abs(x))),
    up: -Math.min(...corners.map(({ y }) => y)),
    down: Math.max(...corners.map(({ y }) => y)),
    lugs: shape.lugs.map((spot) => ({
      ...spot,
      ...turned(spot, degrees),
      leave: turned(spot.leave, degrees),
      beside: turned(spot.beside, degrees),
    })),
    texts: shape.texts.map((text) => ({ ...text, ...turned(text, degrees) })),
  };
}
