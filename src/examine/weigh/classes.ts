import type { Fault } from "../../bench/faults/fault.ts";
import { createPrior, type FaultCounts } from "../../bench/faults/hypotheses/prior.ts";
import type { FaultKind, JointAge } from "../../bench/faults/priors/fault-shares.ts";
import type { Checkpoint } from "../../checkpoint.ts";
import { type Departure, NOTHING } from "../departures/departure.ts";
import type { Weigher } from "./weigher.ts";

/** Departures that nothing given tells apart. */
export interface Class {
  readonly members: Departure[];
  /** ln of how likely they are together, but for the takes. */
  readonly log: number;
}

/** ln of how likely a fault is before anything was recorded, and of what a meter's readings say of it. */
export interface Beliefs {
  readonly prior: (faults: readonly Fault[]) => number;
  readonly readings: (faults: readonly Fault[]) => number;
}

/** What each departure would be called at any value of its own. */
export function anyName({ freed, added, faults }: Departure): readonly Fault[] {
  const asked = Math.max(1, freed.length, added.length);
  return faults(Array.from({ length: asked }, () => 3));
}

/** The same where nothing shows of it. */
export const unseenName = (departure: Departure): readonly Fault[] => departure.slight ?? anyName(departure);

/** ln of a sum, of logarithms. */
export function logSum(logs: readonly number[]): number {
  const top = logs.reduce((most, each) => Math.max(most, each), Number.NEGATIVE_INFINITY);
  return top + Math.log(logs.reduce((sum, each) => sum + Math.exp(each - top), 0));
}

export function priorOf(departures: readonly Departure[], joints: JointAge | undefined): Beliefs["prior"] {
  const counts: Partial<Record<FaultKind, number>> = {};
  for (const { kind } of departures.flatMap(anyName)) counts[kind] = (counts[kind] ?? 0) + 1;
  return createPrior(counts satisfies FaultCounts, { isComplainedOf: false, joints });
}

export const isValued = ({ freed, added }: Departure) => freed.length + added.length > 0;

function logOf(departure: Departure, { prior, readings }: Beliefs, mostOfReadings: number): number {
  const names = departure === NOTHING ? [[]] : anyName(departure).map((fault) => [fault]);
  // What readings say of a value is only known once the takes say which.
  return logSum(names.map((faults) => prior(faults) + (isValued(departure) ? mostOfReadings : readings(faults))));
}

/** The guard as drawn is one of the departures. */
export function classesOf(
  weigher: Weigher,
  departures: readonly Departure[],
  beliefs: Beliefs,
  { checkpoint }: Checkpoint,
): Class[] {
  const byKey = new Map<string, Departure[]>();
  for (const departure of [NOTHING, ...departures]) {
    checkpoint();
    const key = weigher.keyOf(departure);
    const found = byKey.get(key);
    // One guard stands for all that look like it.
    if (found) {
      found.push(departure);
      weigher.forget(departure);
    } else byKey.set(key, [departure]);
  }
  const fixed = departures.filter((each) => !isValued(each)).flatMap(anyName);
  const most = fixed.reduce((best, fault) => {
    checkpoint();
    return Math.max(best, beliefs.readings([fault]));
  }, beliefs.readings([]));
  return [...byKey.values()].map((members) => ({
    members,
    log: logSum(members.map((each) => logOf(each, beliefs, most))),
  }));
}
