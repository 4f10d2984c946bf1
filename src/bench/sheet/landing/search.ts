import { Loads } from "./points.ts";
import type { Landing, LandingProblem } from "./problem.ts";

/** Places tried before the best so far is taken; a guard with three humbuckers and four pots takes some thousands. */
const MAX_TRIED = 60_000;

/**
 * Where every open end lands for the fewest points, by branch and bound: a joint never gets cheaper by one more end, so what is
 * placed so far and the cheapest option of everything else together bound every way on.
 */
export function searchLanding(problem: LandingProblem, maxTried = MAX_TRIED): Landing {
  const { open } = problem;
  const loads = new Loads(problem);
  // What is still to come costs at least its own cheapest option.
  const atLeast = Array.from({ length: open.length + 1 }, () => 0);
  for (let index = open.length - 1; index >= 0; index--)
    atLeast[index] = atLeast[index + 1]! + Math.min(...open[index]!.options.map(({ points }) => points));
  const choice: number[] = [];
  let best: number[] = [];
  let bestPoints = Number.POSITIVE_INFINITY;
  let tried = 0;
  const place = (index: number, own: number): void => {
    if (own + loads.points + atLeast[index]! >= bestPoints) return;
    if (index === open.length) {
      best = [...choice];
      bestPoints = own + loads.points;
      return;
    }
    const { options, sitting } = open[index]!;
    const ranked = options.map(({ lug, points }, option) => {
      loads.add(lug, sitting, 1);
      const all = points + loads.points;
      loads.add(lug, sitting, -1);
      return { lug, points, option, all };
    });
    for (const { lug, points, option } of ranked.sort((a, b) => a.all - b.all || a.option - b.option)) {
      if (tried >= maxTried && best.length === open.length) return;
      tried++;
      loads.add(lug, sitting, 1);
      choice[index] = option;
      place(index + 1, own + points);
      loads.add(lug, sitting, -1);
    }
  };
  place(0, 0);
  return { choice: best, points: bestPoints, isProven: tried < maxTried };
}
