import type { GridPowers } from "./grid-powers.ts";
import type { Reference } from "./peak.ts";
import { type PowerCurve, slopeAt } from "./power-curve.ts";
import { rootBetween } from "./root-between.ts";
import { settledFrequency, type Uncertain } from "./settled.ts";

/** Of a logarithm of powers. */
const ROUNDING = 1e-12;
/** How many times what it may be off a crossing is sought about. */
const REACH = 2;

/** @returns the index of the last sample that reaches a target's power, −1 where none does */
export function lastReaching(powers: GridPowers, count: number, target: Reference): number {
  let last = count - 1;
  while (last >= 0 && !powers.reaches(last, target.power, target.off)) last--;
  return last;
}

/** Frequencies in Hz; the curve reaches the target at the first and not at the second. */
type Between = readonly [from: number, to: number];

/** About where another curve has it; undefined where this one has not. */
export function crossingReach(curve: PowerCurve, { value, off }: Uncertain, target: Reference): Between | undefined {
  const reach = REACH * off;
  if (!(reach < value / 100)) return undefined;
  return curve.at(value - reach) >= target.power && curve.at(value + reach) < target.power
    ? [value - reach, value + reach]
    : undefined;
}

export interface FoundCrossing {
  readonly place: Uncertain;
  /** Undefined where only a more exact curve could say all digits. */
  readonly frequency: number | undefined;
}

/** Where the curve falls through the target. */
export function crossingOn(curve: PowerCurve, [from, to]: Between, target: Reference): FoundCrossing {
  const value = rootBetween((hertz) => curve.at(hertz) - target.power, from, to);
  const place = { value, off: curve.exact ? placeOff(curve, value, target) : 0 };
  return { place, frequency: settledFrequency(place) };
}

function placeOff(curve: PowerCurve, frequency: number, target: Reference): number {
  const share = curve.offAt(frequency) / curve.at(frequency) + target.off / target.power + ROUNDING;
  return (frequency * share) / Math.abs(slopeAt(curve, frequency));
}
