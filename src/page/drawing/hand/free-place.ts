import type { Placed } from "../arrange.ts";
import type { Point } from "../point.ts";
import { placeAt, type WrittenPlace } from "./place-edits.ts";

/** Width and height that a new part of a kind takes in the drawing, room for its name included. */
const ROOM: Readonly<Record<string, readonly [number, number]>> = {
  pickup: [200, 220],
  pot: [140, 180],
  switch: [180, 160],
  cap: [120, 80],
  resistor: [120, 80],
  jack: [130, 130],
  terminal: [130, 90],
};
const STEP = 20;
const GAP = 10;

function isFree({ x, y }: Point, [width, height]: readonly [number, number], placed: readonly Placed[]): boolean {
  return placed.every(({ centre, shape }) => {
    const apartX = Math.abs(centre.x - x) >= (shape.width + width) / 2 + GAP;
    const above = y + height / 2 + GAP <= centre.y - shape.up;
    const below = y - height / 2 - GAP >= centre.y + shape.down;
    return apartX || above || below;
  });
}

/** The free place nearest to the middle of the drawing for a part of a kind; below everything where it is full. */
export function freePlace(kind: string, placed: readonly Placed[]): WrittenPlace {
  const room = ROOM[kind] ?? [200, 220];
  const xs = placed.map(({ centre }) => centre.x);
  const ys = placed.flatMap(({ centre, shape }) => [centre.y - shape.up, centre.y + shape.down]);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [top, bottom] = [Math.min(...ys), Math.max(...ys) + room[1] + GAP];
  const middle = { x: (left + right) / 2, y: (top + Math.max(...ys)) / 2 };
  let best: Point | undefined;
  const away = ({ x, y }: Point) => Math.hypot(x - middle.x, y - middle.y);
  for (let x = left; x <= right; x += STEP)
    for (let y = top + room[1] / 2; y <= bottom; y += STEP)
      if (isFree({ x, y }, room, placed) && (!best || away({ x, y }) < away(best))) best = { x, y };
  return placeAt(best ?? { x: middle.x, y: bottom });
}
