import { Point } from "./point.ts";

/** Of what a part's data leave open: an even spread's bounds lie at 1.7. */
const MOST_DEVIATIONS = 3;

/** The nearest guard whose parts may still be those of the drawing. */
export function withinTolerance({ unknowns, values }: Point): Point {
  return new Point(
    unknowns,
    values.map((value, k) => {
      const most = MOST_DEVIATIONS * unknowns.all[k]!.deviation;
      return Math.max(-most, Math.min(most, value));
    }),
  );
}
