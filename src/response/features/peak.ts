import { powerDecibels } from "../../decibels.ts";
import { type PowerCurve, SLOPE_STEP, slopeAt } from "./power-curve.ts";
import { rootBetween } from "./root-between.ts";
import { settledFrequency, settledLevel, type Uncertain } from "./settled.ts";

/** Smaller rises than this are the plateau itself bending, not a resonance that anybody would call a peak. */
export const MIN_PEAK_DB = 0.25;
/** What rounding leaves of a slope. */
const SLOPE_ROUNDING = 1e-12;
/** How many times what it may be off a maximum is sought about. */
const REACH = 2;
const LEVEL_ROUNDING = 1e-10;
/** For a curvature; a slope's own, over the powers of s that a slope may multiply. */
const NEAR = 1e-4;
const SLOPE_POWERS = 16;
/** Halvings on the way to a rising slope beside a maximum. */
const MOST_HALVINGS = 30;

/** What levels are over, and by how much it may be off. */
export interface Reference {
  readonly power: number;
  readonly off: number;
}

/** Frequencies in Hz; the curve goes up at the first and down at the second. */
type Between = readonly [from: number, to: number];

/** A place between a sample and its highest neighbour where the curve goes up (or, with sign −1, down). */
function placeOfSlope(curve: PowerCurve, from: number, top: number, sign: 1 | -1): number {
  let place = from;
  for (let step = 0; step < MOST_HALVINGS && sign * slopeAt(curve, place) <= 0; step++) place = (place + top) / 2;
  return place;
}

/** About a sample that its neighbours do not exceed. */
export function betweenNeighbours(curve: PowerCurve, gridHz: Float64Array, top: number): Between {
  return [
    placeOfSlope(curve, gridHz[top - 1]!, gridHz[top]!, 1),
    placeOfSlope(curve, gridHz[top + 1]!, gridHz[top]!, -1),
  ];
}

/** Where the maximum about a sample is; undefined where it does not reach the target. */
export function maximumOn(curve: PowerCurve, gridHz: Float64Array, top: number, target: Reference): number | undefined {
  const [from, to] = betweenNeighbours(curve, gridHz, top);
  const place = rootBetween((hertz) => slopeAt(curve, hertz), from, to);
  const power = curve.at(place);
  if (curve.exact && Math.abs(power - target.power) <= curve.offAt(place) + target.off)
    return maximumOn(curve.exact(), gridHz, top, target);
  return power >= target.power ? place : undefined;
}

/** About where another curve has it; undefined where this one has not. */
export function betweenReach(curve: PowerCurve, { value, off }: Uncertain): Between | undefined {
  const reach = REACH * off;
  if (!(reach < value / 100)) return undefined;
  return slopeAt(curve, value - reach) > 0 && slopeAt(curve, value + reach) < 0
    ? [value - reach, value + reach]
    : undefined;
}

export interface FoundPeak {
  readonly place: Uncertain;
  /** Null where it hardly rises over the reference; undefined where only a more exact curve could say all digits. */
  readonly peak: { readonly frequency: number; readonly level: number } | null | undefined;
}

/** The maximum between two frequencies. */
export function peakBetween(curve: PowerCurve, [from, to]: Between, reference: Reference): FoundPeak {
  const frequency = rootBetween((hertz) => slopeAt(curve, hertz), from, to);
  const power = curve.at(frequency);
  const ownShare = curve.offAt(frequency) / power;
  const share = ownShare + reference.off / reference.power;
  const level = settledLevel({
    value: powerDecibels(power) - powerDecibels(reference.power),
    off: curve.exact ? 5 * share + LEVEL_ROUNDING : 0,
  });
  const place = { value: frequency, off: curve.exact ? placeOff(curve, frequency, ownShare) : 0 };
  if (level !== undefined && level <= MIN_PEAK_DB) return { place, peak: null };
  const settled = settledFrequency(place);
  const isSettled = level !== undefined && settled !== undefined;
  return { place, peak: isSettled ? { frequency: settled, level } : undefined };
}

/** By how much a maximum may be off where the power may be off by a share of itself. */
function placeOff(curve: PowerCurve, frequency: number, share: number): number {
  const bend = Math.abs(slopeAt(curve, frequency * (1 + NEAR)) / NEAR);
  const times = curve.slope ? SLOPE_POWERS + Math.sqrt(bend) : 1 / SLOPE_STEP;
  const slopeOff = share * times + SLOPE_ROUNDING;
  return (frequency * slopeOff) / bend;
}
