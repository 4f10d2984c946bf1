import type { LugSpot, Point, Shape } from "./shapes.ts";

const round = (value: number) => Math.round(value * 1000) / 1000 || 0;

/** Counter-clockwise where y points up, by degrees. */
export function turned({ x, y }: Point, degrees: number): Point {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: round(x * cos - y * sin), y: round(x * sin + y * cos) };
}

/** Where wires leave a lug and where its name stands, before the part is turned. */
function directions({ x, out, beside }: LugSpot): { leave: Point; name: Point } {
  if (out !== 0) return { leave: { x: 0, y: out }, name: { x: 0, y: -out } };
  const along = { x: beside ?? (Math.sign(x) || 1), y: 0 };
  return { leave: along, name: beside === undefined ? { x: 0, y: 1 } : along };
}

function turnedLug(spot: LugSpot, degrees: number): LugSpot {
  const { leave, name } = directions(spot);
  return {
    ...spot,
    ...turned(spot, degrees),
    turned: { leave: turned(leave, degrees), name: turned(name, degrees) },
  };
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
    lugs: shape.lugs.map((spot) => turnedLug(spot, degrees)),
  };
}
