/**
 * A point of a part, in metres from its middle, the part not turned, as seen from the back of the guard: x to the right, from
 * the bridge towards the neck; y upwards, from the bass side towards the treble side. Counter-clockwise from there is then the
 * mathematician's positive turn.
 *
 * Every dimension in this folder is common practice, from memory: right enough to tell which lug lies beside which, and to cut
 * wire by; no drawing of any real part was measured.
 */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Spots by the lugs' names within their part. */
export type Spots = ReadonlyMap<string, Spot>;

/** Millimetres, as dimensions of parts are given, in metres. */
export const mm = (millimetres: number): number => millimetres / 1000;

/** Lugs along x about a middle. @param pitch metres */
export function inRow(locals: readonly string[], pitch: number, middle: Spot = { x: 0, y: 0 }): [string, Spot][] {
  const first = middle.x - ((locals.length - 1) * pitch) / 2;
  return locals.map((local, index) => [local, { x: first + index * pitch, y: middle.y }]);
}

/** Lugs along y about a middle, from the bass side on. @param pitch metres */
export function inColumn(locals: readonly string[], pitch: number, middle: Spot = { x: 0, y: 0 }): [string, Spot][] {
  const first = middle.y - ((locals.length - 1) * pitch) / 2;
  return locals.map((local, index) => [local, { x: middle.x, y: first + index * pitch }]);
}

const DEGREE = Math.PI / 180;

/** Turned about the middle, counter-clockwise as seen from the back. */
export function turnedSpot({ x, y }: Spot, degrees: number): Spot {
  const [cos, sin] = [Math.cos(degrees * DEGREE), Math.sin(degrees * DEGREE)];
  return { x: x * cos - y * sin, y: x * sin + y * cos };
}

/** Metres between two spots. */
export function apart(a: Spot, b: Spot): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
