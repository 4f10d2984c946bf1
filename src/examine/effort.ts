import { FAULT_SHARES } from "../bench/faults/priors/fault-shares.ts";
import { networkSize } from "../bench/solving-effort.ts";
import type { Build } from "../build-file/schema.ts";
import { CircuitMaker } from "../response/circuit.ts";
import type { Departure } from "./departures/departure.ts";
import { anyName } from "./weigh/classes.ts";

/** Multiplications that an examination may take, some ten seconds' worth, for most of a network lies idle; a usual guard takes two. */
export const EXAMINE_BUDGET = 4e10;
/** Of that, to choose a next take by. */
const NEXT_SHARE = 0.25;
/** Frequencies that a take is weighed at. */
const FREQUENCIES = 32;
/** Beside the elimination: every element's slopes, and their products. */
const PER_UNKNOWN = 60;
const PER_FREQUENCY = 3000;
/** Settings that guards may be put into, of thirty parts each: some ten seconds' worth. */
const MOST_VIEWS = 18_000;
/** To make a guard of a departure takes as long as to put it into so many settings. */
const VIEWS_PER_GUARD = 4;
const USUAL_PARTS = 30;
const LEAST_DEPARTURES = 50;

/** Multiplications to weigh one departure once. */
export function weighingCost(build: Build, takes: number): number {
  const size = networkSize(new CircuitMaker(build));
  return takes * FREQUENCIES * (size ** 3 + PER_UNKNOWN * size ** 2 + PER_FREQUENCY);
}

/** How many candidates for a next take may be tried, each by so many guards at so many frequencies. */
export function affordableTakes(build: Build, guards: number, frequencies: number): number {
  const each = (weighingCost(build, 1) * frequencies * guards) / FREQUENCIES;
  return Math.max(1, Math.floor((NEXT_SHARE * EXAMINE_BUDGET) / each));
}

/**
 * All departures of a usual guard; of a huge one, the commonest.
 * @param mostByMeter that readings may be asked about
 */
export function affordableDepartures(
  build: Build,
  all: readonly Departure[],
  takes: number,
  mostByMeter = Number.POSITIVE_INFINITY,
): readonly Departure[] {
  const parts = Object.keys(build.parts).length;
  const views = MOST_VIEWS * Math.min(1, USUAL_PARTS / parts);
  const most = Math.max(LEAST_DEPARTURES, Math.floor(Math.min(mostByMeter, views / (VIEWS_PER_GUARD + takes))));
  if (all.length <= most) return all;
  const share = (each: Departure) => FAULT_SHARES[anyName(each)[0]!.kind].share;
  return [...all].sort((a, b) => share(b) - share(a)).slice(0, most);
}
