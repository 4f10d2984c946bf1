import type { Departure } from "../departures/departure.ts";
import type { Point, Unknowns } from "../model/point.ts";
import { multipleAt } from "../model/unknowns.ts";
import type { LinearFit } from "./fit.ts";
import { ownOf } from "./starting-points.ts";

/** A departure, weighed. */
export interface Weighed {
  readonly departure: Departure;
  readonly fit: LinearFit;
  readonly point: Point;
}

/** How many times what was drawn each freed or added value has. */
export function factorsOf({ departure, point }: Pick<Weighed, "departure" | "point">): number[] {
  return ownOf(departure).map(({ part, field }) => {
    const index = point.unknowns.indexOf(part, field);
    return index < 0 ? 1 : multipleAt(point.unknowns.all[index]!, point.values[index]!);
  });
}

/** Standard deviations of the unknowns' own laws in a guard that departs so. @param shared the unknowns that every departure has */
export function deviationsOf(shared: Unknowns, { freed, added }: Departure): Float64Array {
  const unknowns = shared.with(added);
  const deviations = Float64Array.from(unknowns.all, ({ deviation }) => deviation);
  for (const { part, field, deviation } of freed) deviations[unknowns.indexOf(part, field)] = deviation;
  return deviations;
}
