import { Point } from "../model/point.ts";
import type { Contribution } from "./evidence.ts";
import { type LinearFit, linearFit } from "./fit.ts";

/** What all evidence says about a point. */
export interface Stage {
  readonly point: Point;
  readonly contributions: readonly Contribution[];
  readonly fit: LinearFit;
}

type StageAt = (point: Point) => Stage;

const MOST_ROUNDS = 30;
/** A round that gains less, in chi-square, is the last. */
const SETTLED = 0.05;
/** Tried in turn until one brings a round nearer. */
const DAMPINGS = [0, 0.1, 1, 10, 100];
/** No round moves an unknown by more of its own deviations. */
const MOST_STEP = 2;
/** Rounds before a departure is judged by how far it has come. */
const PATIENCE = 2;

function better(stageAt: StageAt, { point, contributions, fit }: Stage, deviations: Float64Array): Stage | undefined {
  for (const damping of DAMPINGS) {
    const { best } = damping === 0 ? fit : linearFit(contributions, point.values, deviations, damping);
    const values = point.values.map((value, k) => {
      const most = MOST_STEP * deviations[k]!;
      return value + Math.max(-most, Math.min(most, best[k]! - value));
    });
    const next = stageAt(new Point(point.unknowns, values));
    if (next.fit.objective < fit.objective) return next;
  }
  return undefined;
}

/**
 * Round after round to the likeliest place.
 * @param hopeless ln of the evidence under which it is not worth going on
 */
export function settled(
  from: Stage,
  stageAt: StageAt,
  deviations: Float64Array,
  rounds = MOST_ROUNDS,
  hopeless = Number.NEGATIVE_INFINITY,
): Stage {
  let stage = from;
  for (let round = 0; round < rounds; round++) {
    if (stage.fit.objective - (stage.fit.chiSquare + stage.fit.extra) < SETTLED) break;
    const next = better(stageAt, stage, deviations);
    if (!next) break;
    const gained = stage.fit.objective - next.fit.objective;
    if (round >= PATIENCE && next.fit.log < hopeless) break;
    stage = next;
    if (gained < SETTLED) break;
  }
  return stage;
}
