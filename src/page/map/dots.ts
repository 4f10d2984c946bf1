import type { Places } from "../../choice/map/classical-scaling.ts";
import { fannedOut } from "./fan.ts";
import type { Dot } from "./nearest.ts";

export const WIDTH = 1000;
export const HEIGHT = 720;
const MARGIN = 40;

/** Both axes alike, so that distances on the picture are those of the map. */
function scaled(places: Places): Dot[] {
  const count = places.length / 2;
  const xs = Array.from({ length: count }, (_, i) => places[2 * i]!);
  const ys = Array.from({ length: count }, (_, i) => -places[2 * i + 1]!);
  const range = (of: readonly number[]) => [
    of.reduce((a, b) => Math.min(a, b), 0),
    of.reduce((a, b) => Math.max(a, b), 0),
  ];
  const [[left, right], [top, bottom]] = [range(xs), range(ys)] as [[number, number], [number, number]];
  const spread = Math.max((right - left) / (WIDTH - 2 * MARGIN), (bottom - top) / (HEIGHT - 2 * MARGIN), 1e-9);
  const [middleX, middleY] = [(left + right) / 2, (top + bottom) / 2];
  return xs.map((x, i) => ({ x: WIDTH / 2 + (x - middleX) / spread, y: HEIGHT / 2 + (ys[i]! - middleY) / spread }));
}

/** Where the picture has its dots, so that none hides another. */
export function dotsOf(places: Places): Dot[] {
  return fannedOut(scaled(places));
}
