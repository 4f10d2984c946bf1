import { type Balancing, balance, costOf, gapsFrom, type Target } from "./balance.ts";
import type { FittedLaws } from "./fit-laws.ts";
import { type Gaps, type Travels, travelsBetween } from "./gaps.ts";
import { predictorOf } from "./predictor.ts";
import type { Recorded } from "./recorded.ts";
import { gapOf, type MountedPickup, SIDES, type Side } from "./screws.ts";
import { travelErrors } from "./turn-errors.ts";
import { inWholeEighths } from "./whole-eighths.ts";

export interface SolvedScrew {
  readonly side: Side;
  readonly gapBefore: number;
  readonly gapAfter: number;
  /** Metres, more is lower; after rounding to whole eighths of a turn where the pitch is known. */
  readonly travel: number;
  /** ± of the exact travel, 95 %. */
  readonly travelError: number;
  /** The limit that keeps this side from going farther. */
  readonly stoppedBy: "min" | "max" | null;
}

export interface SolvedPickup {
  readonly pickup: MountedPickup;
  readonly gaps: Gaps;
  readonly screws: readonly SolvedScrew[];
}

function screwsOf(
  pickup: MountedPickup,
  gaps: Gaps,
  errors: Travels,
  held: readonly number[],
  t: number,
): SolvedScrew[] {
  const travels = travelsBetween(pickup.gaps, gaps, pickup.lever);
  return SIDES.map((side, index) => ({
    side,
    gapBefore: gapOf(pickup.gaps, side),
    gapAfter: gapOf(gaps, side),
    travel: gapOf(travels, side),
    travelError: t * gapOf(errors, side),
    stoppedBy: held[index] === -1 ? "min" : held[index] === 1 ? "max" : null,
  }));
}

/** The heights nearest to balance within all limits, in whole eighths of turns where the screws' pitch is known. */
export function solveTurns(
  recorded: Recorded,
  pickups: readonly MountedPickup[],
  fitted: FittedLaws,
  target: Target,
  checkpoint: () => void = () => {},
): SolvedPickup[] {
  const predict = predictorOf(recorded, fitted.laws);
  const balancing: Balancing = { pickups, laws: fitted.laws, target, now: predict(pickups.map(({ gaps }) => gaps)) };
  const solution = balance((gaps) => {
    checkpoint();
    return predict(gaps);
  }, balancing);
  const exact = gapsFrom(solution.unknowns);
  const gaps = inWholeEighths(pickups, exact, (tried) => costOf(predict(tried), tried, balancing));
  const errors = travelErrors({ recorded, fitted, predict, balancing, solution });
  return pickups.map((pickup, index) => ({
    pickup,
    gaps: gaps[index]!,
    screws: screwsOf(pickup, gaps[index]!, errors[index]!, solution.held.slice(2 * index, 2 * index + 2), fitted.t),
  }));
}
