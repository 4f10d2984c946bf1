import type { Point } from "../point.ts";

const DIRECTIONS = 16;
/** From the tip of an end that hangs to the middle of its text, across and down: texts are wider than high. */
const AWAY = { x: 28, y: 18 };
/** Half of the text's width: its two halves are held apart from what is there as well. */
const HALF = 12;
/** Drawing units to the middle of anything else. */
const FREE = 22;
/** What turning away from the way of the wire costs. */
const PER_TURN = 0.12;

const away = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);

/** Where the text at the tip of an end that hangs is clearest of other things, and else straight on. */
export function takenSpot(tip: Point, along: Point, others: readonly Point[]): Point {
  const places = Array.from({ length: DIRECTIONS }, (_, index) => {
    const angle = Math.atan2(along.y, along.x) + (index * 2 * Math.PI) / DIRECTIONS;
    const [x, y] = [Math.cos(angle), Math.sin(angle)];
    const middle = { x: tip.x + x * AWAY.x, y: tip.y + y * AWAY.y };
    const parts = [-HALF, 0, HALF].map((aside) => ({ x: middle.x + aside, y: middle.y }));
    const nearest = Math.min(FREE, ...others.flatMap((other) => parts.map((part) => away(part, other))));
    const turn = 1 - (x * along.x + y * along.y);
    return { middle, worth: nearest / FREE - PER_TURN * turn };
  });
  return places.reduce((best, place) => (place.worth > best.worth ? place : best)).middle;
}
