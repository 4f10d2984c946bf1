/** Relative width at which a search ends. */
const PRECISION = 1e-13;
const MOST_STEPS = 60;

/**
 * Where a function falls through 0 between two places (T. R. Chandrupatla, A new hybrid quadratic/bisection algorithm for finding
 * the zero of a nonlinear function without using derivatives, Adv. Eng. Software 28, 1997).
 * @param valueAt of opposite signs at `from` and `to`, which are above 0
 */
export function rootBetween(valueAt: (place: number) => number, from: number, to: number): number {
  let [a, b, c] = [to, from, to];
  let [atA, atB] = [valueAt(to), valueAt(from)];
  let atC = atA;
  let share = 0.5;
  for (let step = 0; step < MOST_STEPS; step++) {
    const place = a + share * (b - a);
    const at = valueAt(place);
    if (at > 0 === atA > 0) [c, atC] = [a, atA];
    else [c, b, atC, atB] = [b, a, atB, atA];
    [a, atA] = [place, at];
    const best = Math.abs(atA) < Math.abs(atB) ? a : b;
    const least = PRECISION * Math.abs(best);
    const width = Math.abs(b - a);
    if (at === 0 || width <= least) return best;
    const shift = (a - b) / (c - b);
    const ratio = (atA - atB) / (atC - atB);
    const isCurveLike = ratio ** 2 < shift && (1 - ratio) ** 2 < 1 - shift;
    const interpolated =
      (atA / (atB - atA)) * (atC / (atB - atC)) + (((c - a) / (b - a)) * (atA / (atC - atA)) * atB) / (atC - atB);
    const margin = (0.5 * least) / width;
    share = isCurveLike ? Math.min(Math.max(interpolated, margin), 1 - margin) : 0.5;
  }
  return Math.abs(atA) < Math.abs(atB) ? a : b;
}
