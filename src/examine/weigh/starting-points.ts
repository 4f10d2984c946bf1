import type { Departure } from "../departures/departure.ts";
import { Point } from "../model/point.ts";

/** The unknowns that are a departure's own. */
export const ownOf = ({ freed, added }: Departure) => [...freed, ...added];

/** A departure's own unknowns where one of its starts has them, all others as drawn; the same point where that is nowhere else. */
export function startedPoint(nominal: Point, departure: Departure, start: readonly number[]): Point {
  if (start.every((each) => each === 0)) return nominal;
  const values = nominal.values.slice();
  for (const [which, { part, field }] of ownOf(departure).entries())
    values[nominal.unknowns.indexOf(part, field)] = start[which]!;
  return new Point(nominal.unknowns, values);
}

/** Where it was begun, and otherwise where another guard has its parts. */
export function pointAbout(begun: Point, about: Point): Point {
  const values = begun.values.map((value, k) => (value === 0 ? (about.values[k] ?? 0) : value));
  return new Point(begun.unknowns, values);
}

/** At another guard's place, but for what is the departure's own. @param shared how many unknowns every departure has */
export function pointAt(point: Point, { freed }: Departure, there: Point, shared: number): Point {
  const free = new Set(freed.map(({ part, field }) => point.unknowns.indexOf(part, field)));
  const values = point.values.map((value, k) => (k < shared && !free.has(k) ? there.values[k]! : value));
  return new Point(point.unknowns, values);
}

/**
 * Two departures at once, where the first has been found; the second where it begins.
 * @param pair whose starts are the second's
 */
export function pointBeside(
  nominal: Point,
  found: Point,
  { freed, added }: Departure,
  first: Departure,
  start: readonly number[],
): Point {
  if (start.every((each) => each === 0) && added.length === first.added.length) return found;
  const values = nominal.values.map((value, k) => found.values[k] ?? value);
  const seconds = [...freed.slice(first.freed.length), ...added.slice(first.added.length)];
  for (const [which, { part, field }] of seconds.entries())
    if (start[which] !== 0) values[nominal.unknowns.indexOf(part, field)] = start[which]!;
  return new Point(nominal.unknowns, values);
}

/** The first of two departures alone, where both were found; the second's own values as drawn. @param nominal the first's */
export function pointAlone(nominal: Point, found: Point, first: Departure, { freed }: Departure): Point {
  const values = nominal.values.map((value, k) => found.values[k] ?? value);
  for (const { part, field } of freed.slice(first.freed.length)) {
    const index = nominal.unknowns.indexOf(part, field);
    values[index] = nominal.values[index]!;
  }
  return new Point(nominal.unknowns, values);
}

/** Of each unknown's own deviation. */
const MOST_ASIDE = 0.5;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * A little aside in every unknown, each by another share: two coils alike, begun alike, are moved alike, and stay where one of them a
 * little up and the other down would do better.
 */
export function pointAside(point: Point, deviations: Float64Array): Point {
  const values = point.values.map(
    (value, k) => value + MOST_ASIDE * deviations[k]! * (2 * ((GOLDEN * (k + 1)) % 1) - 1),
  );
  return new Point(point.unknowns, values);
}
