import type { Places } from "./classical-scaling.ts";

export interface Oriented {
  readonly places: Places;
  /** How brightness goes with x: the coefficient of correlation, 0 to 1; 0 where there is nothing to correlate. */
  readonly brightness: number;
  /** How fullness goes with y. */
  readonly fullness: number;
}

function correlation(a: Float64Array, b: Float64Array): number {
  const mean = (of: Float64Array) => of.reduce((sum, value) => sum + value, 0) / of.length;
  const [meanA, meanB] = [mean(a), mean(b)];
  let [ab, aa, bb] = [0, 0, 0];
  for (let i = 0; i < a.length; i++) {
    const [x, y] = [a[i]! - meanA, b[i]! - meanB];
    ab += x * y;
    aa += x * x;
    bb += y * y;
  }
  return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : 0;
}

function axisOf(places: Places, axis: 0 | 1): Float64Array {
  return Float64Array.from({ length: places.length / 2 }, (_, i) => places[2 * i + axis]!);
}

/** Turned about its middle so that the longer way lies along x. */
function onPrincipalAxes(places: Places): Places {
  const count = places.length / 2;
  const [xs, ys] = [axisOf(places, 0), axisOf(places, 1)];
  const mean = (of: Float64Array) => of.reduce((sum, value) => sum + value, 0) / Math.max(1, count);
  const [middleX, middleY] = [mean(xs), mean(ys)];
  let [xx, xy, yy] = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    const [x, y] = [xs[i]! - middleX, ys[i]! - middleY];
    xx += x * x;
    xy += x * y;
    yy += y * y;
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const turned = new Float64Array(places.length);
  for (let i = 0; i < count; i++) {
    const [x, y] = [xs[i]! - middleX, ys[i]! - middleY];
    turned[2 * i] = cos * x + sin * y;
    turned[2 * i + 1] = cos * y - sin * x;
  }
  return turned;
}

/** So that the axis goes with a property, or, where that says nothing, its first place off the middle is positive. */
function signOf(along: Float64Array, goesWith: number): 1 | -1 {
  if (goesWith !== 0) return goesWith > 0 ? 1 : -1;
  return (along.find((value) => value !== 0) ?? 1) > 0 ? 1 : -1;
}

/**
 * Turns a map, which scaling leaves turned and mirrored anyhow, always the same way: its longer side along x, brighter to the right and
 * fuller up. Neither axis has a unit of its own; only distances have.
 * @param brightness of each place, in octaves or Cams @param fullness of each, in dB
 */
export function orient(places: Places, brightness: Float64Array, fullness: Float64Array): Oriented {
  const turned = onPrincipalAxes(places);
  const axes = [axisOf(turned, 0), axisOf(turned, 1)] as const;
  const [byX, byY] = [correlation(axes[0], brightness), correlation(axes[1], fullness)];
  const [signX, signY] = [signOf(axes[0], byX), signOf(axes[1], byY)];
  return {
    places: turned.map((value, index) => value * (index % 2 === 0 ? signX : signY)),
    brightness: Math.abs(byX),
    fullness: Math.abs(byY),
  };
}
