import { type Gaps, gapsAfter, travelsBetween } from "./gaps.ts";
import { isWithin, type MountedPickup, TURN_STEP } from "./screws.ts";

/** Turns of a pickup's screws in eighths; more is lower. */
type Eighths = readonly [bass: number, treble: number];

const NEIGHBOURS: readonly Eighths[] = [-1, 0, 1].flatMap((bass) =>
  [-1, 0, 1].map((treble) => [bass, treble] as const),
);
/** The best eighths lie beside the exact turns; more rounds than this would be no rounding. */
const MAX_ROUNDS = 16;

function stepsOf({ pitchMetres: { bass, treble } }: MountedPickup): readonly [number, number] | undefined {
  return bass === undefined || treble === undefined ? undefined : [bass * TURN_STEP, treble * TURN_STEP];
}

function gapsAt(pickup: MountedPickup, [bass, treble]: Eighths, steps: readonly [number, number]): Gaps {
  const travels = { bassMetres: bass * steps[0], trebleMetres: treble * steps[1] };
  return gapsAfter(pickup.gaps, travels, pickup.lever);
}

/** The neighbour of a choice, or the choice itself, that costs least. */
function better(at: Eighths, cost: (eighths: Eighths) => number): Eighths {
  const around = NEIGHBOURS.map(([bass, treble]): Eighths => [at[0] + bass, at[1] + treble]);
  return around.reduce((best, each) => (cost(each) < cost(best) ? each : best), at);
}

/**
 * Gaps that whole eighths of turns reach, within the limits, as near to balance as rounding allows; those of a pickup whose
 * screws' pitch is not known stay as they are. @param costOf the sum of squares to keep low
 */
export function inWholeEighths(
  pickups: readonly MountedPickup[],
  exact: readonly Gaps[],
  costOf: (gaps: readonly Gaps[]) => number,
): Gaps[] {
  const gaps = [...exact];
  const turned = pickups.map((pickup, index): Eighths => {
    const steps = stepsOf(pickup);
    if (!steps) return [0, 0];
    const { bassMetres, trebleMetres } = travelsBetween(pickup.gaps, exact[index]!, pickup.lever);
    return [Math.round(bassMetres / steps[0]), Math.round(trebleMetres / steps[1])];
  });
  for (let round = 0; round < MAX_ROUNDS; round++) {
    let isSettled = round > 0;
    for (const [index, pickup] of pickups.entries()) {
      const steps = stepsOf(pickup);
      if (!steps) continue;
      const cost = (eighths: Eighths) => {
        const moved = gapsAt(pickup, eighths, steps);
        if (!isWithin(pickup, moved)) return Number.POSITIVE_INFINITY;
        return costOf(gaps.map((each, other) => (other === index ? moved : each)));
      };
      const best = better(turned[index]!, cost);
      if (best !== turned[index]) isSettled = false;
      turned[index] = best;
      // Limits narrower than an eighth of a turn hold no whole one.
      if (Number.isFinite(cost(best))) gaps[index] = gapsAt(pickup, best, steps);
    }
    if (isSettled) break;
  }
  return gaps;
}
