import type { Fault } from "../../bench/faults/fault.ts";
import { type Departure, NOTHING } from "../departures/departure.ts";
import { type Beliefs, type Class, isValued, logSum, unseenName } from "./classes.ts";
import { factorsOf, type Weighed } from "./weighed.ts";

/** A fault, or none, and how likely it is before anything was recorded. */
export interface Named {
  readonly faults: readonly Fault[];
  readonly logPrior: number;
}

/** Departures that nothing given tells apart, weighed as one. */
export interface Candidate {
  readonly weighed: Weighed;
  /** The commonest first. */
  readonly names: readonly Named[];
  /** ln of its weight beside the others. */
  readonly score: number;
  readonly logLikelihood: number;
}

/** Names of a class that a meter speaks alike for, in nats, stay together. */
const SAME_READINGS = 1;

/** So many names of a pair, the commonest, are enough to tell it by. */
const MOST_OF_PAIR = 24;

/** What changes nothing that was recorded has no value that takes could tell. */
function namesAt(
  member: Departure,
  factors: readonly number[],
  prior: Beliefs["prior"],
): readonly (readonly Fault[])[] {
  if (member === NOTHING) return [[]];
  if (member.both) return [...member.both(factors)].sort((a, b) => prior(b) - prior(a)).slice(0, MOST_OF_PAIR);
  const named = isValued(member) && factors.length === 0 ? unseenName(member) : member.faults(factors);
  return named.map((fault) => [fault]);
}

/** What takes cannot tell apart, by what a meter's readings tell of it. */
export function candidatesOf({ members }: Class, weighed: Weighed, { prior, readings }: Beliefs): Candidate[] {
  const factors = factorsOf(weighed);
  const names = members.flatMap((member) => namesAt(member, factors, prior));
  const told = names.map((faults) => ({ faults, logPrior: prior(faults), readings: readings(faults) }));
  const clusters: (typeof told)[] = [];
  for (const each of told.sort((a, b) => b.readings - a.readings)) {
    const found = clusters.find(([first]) => first!.readings - each.readings < SAME_READINGS);
    if (found) found.push(each);
    else clusters.push([each]);
  }
  return clusters.map((cluster) => {
    const ordered = [...cluster].sort((a, b) => b.logPrior - a.logPrior);
    return {
      weighed,
      names: ordered.map(({ faults, logPrior }) => ({ faults, logPrior })),
      score: weighed.fit.log + logSum(cluster.map((each) => each.logPrior + each.readings)),
      logLikelihood: weighed.fit.log + cluster[0]!.readings,
    };
  });
}
