import type { SeenLug } from "../view.ts";

const CLEAR = 13;
/** How far into the body a contact goes that has other lugs between its ends. */
const DEEP = 15;
const round = (value: number) => Math.round(value * 10) / 10;

/** How far a lug is from the line between two others, or undefined where it is not between them. */
function awayFrom(a: SeenLug, b: SeenLug, { x, y }: SeenLug): number | undefined {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = Math.hypot(dx, dy);
  const along = ((x - a.x) * dx + (y - a.y) * dy) / length;
  if (along <= 0 || along >= length) return undefined;
  return Math.abs((x - a.x) * dy - (y - a.y) * dx) / length;
}

/** A closed contact between two lugs of a switch: straight, or by the inside of the body past the lugs between them. */
export function contactLine(a: SeenLug, b: SeenLug, lugs: Iterable<SeenLug>): string {
  const isBlocked = [...lugs].some((lug) => {
    if (lug.name === a.name || lug.name === b.name) return false;
    const away = awayFrom(a, b, lug);
    return away !== undefined && away < CLEAR;
  });
  if (!isBlocked) return `M${a.x} ${a.y}L${b.x} ${b.y}`;
  const { x, y } = a.leave.x === 0 && a.leave.y === 0 ? { x: 0, y: 1 } : a.leave;
  const inside = (lug: SeenLug, by: number) => `${round(lug.x - x * by)} ${round(lug.y - y * by)}`;
  return `M${a.x} ${a.y}L${inside(a, DEEP)}L${inside(b, DEEP)}L${b.x} ${b.y}`;
}
