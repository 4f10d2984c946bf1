import type { Point } from "../point.ts";

const SAMPLES = 40;

interface Curve {
  at(t: number): Point;
}

const round = (value: number) => Math.round(value * 10) / 10;

interface CurveStart {
  readonly d: string;
  readonly end: Point;
  /** Unit vector at the end. */
  readonly along: Point;
  /** Where on the curve it ends, at most 1. */
  readonly until: number;
}

/** The first `units` of a curve, less where it is shorter. */
export function startOf(curve: Curve, units: number): CurveStart {
  const points = [curve.at(0)];
  let along = { x: 0, y: 0 };
  let length = 0;
  let until = 0;
  for (let sample = 1; sample <= SAMPLES && length < units; sample++) {
    const [before, here] = [points.at(-1)!, curve.at(sample / SAMPLES)];
    const step = Math.hypot(here.x - before.x, here.y - before.y);
    const share = step === 0 ? 0 : Math.min(1, (units - length) / step);
    if (step > 0) along = { x: (here.x - before.x) / step, y: (here.y - before.y) / step };
    points.push({ x: before.x + (here.x - before.x) * share, y: before.y + (here.y - before.y) * share });
    length += step;
    until = sample / SAMPLES;
  }
  return { d: `M${points.map(({ x, y }) => `${round(x)} ${round(y)}`).join("L")}`, end: points.at(-1)!, along, until };
}
