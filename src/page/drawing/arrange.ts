import type { Build, Part } from "../../build-file/schema.ts";
import type { Point } from "./point.ts";
import { type Shape, shapeOf } from "./shapes.ts";
import { turnedShape } from "./turn.ts";

export interface Placed {
  readonly name: string;
  readonly part: Part;
  /** As it lies, turned with the part. */
  readonly shape: Shape;
  /** As it is before it is turned. */
  readonly upright: Shape;
  /** Degrees counter-clockwise as seen from the back. */
  readonly turn: number;
  readonly centre: Point;
}

/** Drawing units a metre of the guard: parts are drawn larger than life, so that lugs can be told apart. */
export const UNITS_PER_METRE = 3000;
const GAP = 16;
const ROUNDS = 300;

const ROW_Y: Readonly<Record<Part["kind"], number>> = {
  pickup: 0,
  switch: 0.1,
  pot: 0.105,
  cap: 0.17,
  resistor: 0.19,
  jack: 0.15,
  terminal: 0.06,
};

function partsWiredTo(build: Build, name: string): string[] {
  const partOf = (lug: string) => lug.split(".")[0]!;
  return build.wires.flatMap(({ from, to }) => {
    const [a, b] = [partOf(from), partOf(to)];
    return a === name && b !== name ? [b] : b === name && a !== name ? [a] : [];
  });
}

/** Where a part would sit that does not say: pickups by their distance, others in a row by kind. */
function usualPlace(build: Build, name: string, index: number): Point {
  const part = build.parts[name]!;
  if (part.kind === "pickup") {
    const distances = Object.values(part.coils).flatMap((coil) => coil.distance ?? []);
    const mean = distances.reduce((sum, each) => sum + each, 0) / distances.length;
    return { x: distances.length > 0 ? mean : 0.16 - index * 0.06, y: 0 };
  }
  return { x: 0.14 - index * 0.05, y: ROW_Y[part.kind] };
}

function usualPlaces(build: Build): Map<string, Point> {
  const counts = new Map<string, number>();
  return new Map(
    Object.entries(build.parts).map(([name, part]) => {
      const index = counts.get(part.kind) ?? 0;
      counts.set(part.kind, index + 1);
      return [name, part.place ?? usualPlace(build, name, index)];
    }),
  );
}

/** Small parts without a place hang between what they are wired to. */
function nearWiredParts(build: Build, places: Map<string, Point>): Map<string, Point> {
  return new Map(
    [...places].map(([name, place]) => {
      const part = build.parts[name]!;
      if (part.place || (part.kind !== "cap" && part.kind !== "resistor")) return [name, place];
      const near = partsWiredTo(build, name).flatMap((other) => places.get(other) ?? []);
      if (near.length === 0) return [name, place];
      const mean = (axis: "x" | "y") => near.reduce((sum, each) => sum + each[axis], 0) / near.length;
      return [name, { x: mean("x"), y: mean("y") + 0.03 }];
    }),
  );
}

interface Body {
  x: number;
  y: number;
  readonly width: number;
  readonly height: number;
  readonly isPickup: boolean;
  /** Drawn where its place says, whatever lies there. */
  readonly isPinned: boolean;
  /** Others make way for it. */
  readonly fixed: boolean;
}

function pushApart(a: Body, b: Body): boolean {
  const overlapX = (a.width + b.width) / 2 + GAP - Math.abs(a.x - b.x);
  const overlapY = (a.height + b.height) / 2 + GAP - Math.abs(a.y - b.y);
  if (overlapX <= 0.5 || overlapY <= 0.5) return false;
  // A part that would lie on a pickup leaves the row of pickups; along it, it would only meet the next one.
  const axis = overlapX < overlapY && !a.isPickup && !b.isPickup ? "x" : "y";
  const push = axis === "x" ? overlapX : overlapY;
  const sign = a[axis] < b[axis] || (a[axis] === b[axis] && a.width <= b.width) ? -1 : 1;
  const shareA = a.fixed ? 0 : b.fixed ? 1 : 0.5;
  a[axis] += sign * push * shareA;
  b[axis] -= sign * push * (1 - shareA);
  return true;
}

/** Moves parts that would overlap apart, pickups last of all. */
function settle(bodies: readonly Body[]): void {
  for (let round = 0; round < ROUNDS; round++) {
    let moved = false;
    for (const [index, a] of bodies.entries())
      for (const b of bodies.slice(index + 1)) if (!(a.fixed && b.fixed) && pushApart(a, b)) moved = true;
    if (!moved) return;
  }
}

/** A pickup that was laid elsewhere is in nobody's way. */
function isClearOf(body: Body, before: Body): boolean {
  return before.isPinned && Math.abs(body.y - before.y) >= (body.height + before.height) / 2;
}

/** Pickups keep to their row; where they would touch, they spread along it. */
function spreadPickups(bodies: readonly Body[]): void {
  const row = bodies.filter((body) => body.isPickup).sort((a, b) => a.x - b.x);
  for (const [index, body] of row.entries()) {
    const before = row[index - 1];
    if (body.isPinned || !before || isClearOf(body, before)) continue;
    body.x = Math.max(body.x, before.x + (before.width + body.width) / 2 + GAP);
  }
}

/** Every part with its drawn shape where it sits, seen from the front: x towards the neck, y towards the treble side. */
export function arrangeParts(build: Build): Placed[] {
  const places = nearWiredParts(build, usualPlaces(build));
  const upright = Object.entries(build.parts).map(([name, part]) => ({
    name,
    part,
    upright: shapeOf(part),
    turn: part.place?.turn ?? 0,
  }));
  const shapes = upright.map((each) => ({ ...each, shape: turnedShape(each.upright, each.turn) }));
  const bodies = shapes.map(({ name, part, shape }): Body => {
    const place = places.get(name)!;
    const { width, up, down } = shape;
    const y = place.y * UNITS_PER_METRE + (down - up) / 2;
    const isPickup = part.kind === "pickup";
    const isPinned = part.place?.turn !== undefined;
    const x = place.x * UNITS_PER_METRE;
    return { x, y, width, height: up + down, isPickup, isPinned, fixed: isPickup || isPinned };
  });
  spreadPickups(bodies);
  settle(bodies);
  return shapes.map((each, index) => ({
    ...each,
    centre: { x: bodies[index]!.x, y: bodies[index]!.y - (each.shape.down - each.shape.up) / 2 },
  }));
}
