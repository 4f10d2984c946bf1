import { Point as FlatPoint, Polygon, type Segment } from "@flatten-js/core";
import type { Outline, Point } from "./outline.ts";

/** The library takes lengths below a millionth for nothing; in millimetres that is a nanometre. */
const PER_METRE = 1000;
const TOUCHING_MM = 1e-6;

/** An outline as the polygon library has it, in millimetres. */
export interface Shape {
  readonly polygon: Polygon;
  readonly sides: readonly Segment[];
}

export const flatPoint = ([x, y]: Point): FlatPoint => new FlatPoint(x * PER_METRE, y * PER_METRE);
export const pointOf = ({ x, y }: FlatPoint): Point => [x / PER_METRE, y / PER_METRE];
export const metresOf = (millimetres: number): number => millimetres / PER_METRE;

const shapes = new WeakMap<Outline, Shape>();

/** The same outline gives the same shape, since making its index takes longer than asking it. */
export function shapeOf(outline: Outline): Shape {
  const known = shapes.get(outline);
  if (known) return known;
  const polygon = new Polygon(outline.map(([x, y]) => [x * PER_METRE, y * PER_METRE]) as never);
  const shape = { polygon, sides: [...polygon.edges].map((edge) => edge.shape as Segment) };
  shapes.set(outline, shape);
  return shape;
}

export const holds = ({ polygon }: Shape, point: FlatPoint): boolean => polygon.contains(point);

/** Whether the upright rectangles about two sides meet; the library is asked for the rest, which takes much longer. */
const mayMeet = (a: Segment, b: Segment): boolean =>
  Math.min(a.ps.x, a.pe.x) <= Math.max(b.ps.x, b.pe.x) + TOUCHING_MM &&
  Math.min(b.ps.x, b.pe.x) <= Math.max(a.ps.x, a.pe.x) + TOUCHING_MM &&
  Math.min(a.ps.y, a.pe.y) <= Math.max(b.ps.y, b.pe.y) + TOUCHING_MM &&
  Math.min(b.ps.y, b.pe.y) <= Math.max(a.ps.y, a.pe.y) + TOUCHING_MM;

/** Where two sides meet. */
export const crossingsOf = (a: Segment, b: Segment): FlatPoint[] => (mayMeet(a, b) ? a.intersect(b) : []);

/** Two sides that cross or touch where they must not, counted from 0, and the point. */
export interface Crossing {
  readonly sides: readonly [number, number];
  readonly at: Point;
}

/** Neighbours share one corner; any other two sides share nothing. */
function meetingsOf(sides: readonly Segment[], one: number, other: number): FlatPoint[] {
  const shared =
    other === one + 1 ? sides[one]!.pe : one === 0 && other === sides.length - 1 ? sides[0]!.ps : undefined;
  return crossingsOf(sides[one]!, sides[other]!).filter((point) => shared === undefined || !point.equalTo(shared));
}

/** Where an outline crosses or touches itself, if it does. */
export function crossingOf(outline: Outline): Crossing | undefined {
  const { sides } = shapeOf(outline);
  for (let one = 0; one < sides.length; one += 1) {
    for (let other = one + 1; other < sides.length; other += 1) {
      const [at] = meetingsOf(sides, one, other);
      if (at) return { sides: [one, other], at: pointOf(at) };
    }
  }
  return undefined;
}

/** Square metres. */
export const areaOf = (outline: Outline): number => shapeOf(outline).polygon.area() / PER_METRE ** 2;
