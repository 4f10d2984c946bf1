import { powerFromDecibels, SILENT_POWER } from "../decibels.ts";
import { crossingOn, crossingReach, lastReaching } from "./features/cutoff.ts";
import { GridPowers } from "./features/grid-powers.ts";
import { highestSample, maximaReaching } from "./features/maxima.ts";
import {
  betweenNeighbours,
  betweenReach,
  MIN_PEAK_DB,
  maximumOn,
  peakBetween,
  type Reference,
} from "./features/peak.ts";
import type { PowerCurve } from "./features/power-curve.ts";
import { logSpaced } from "./frequencies.ts";

export interface Features {
  /** The highest resonance above the level at 200 Hz: frequency in Hz, level in dB above that level. */
  readonly peak: { readonly frequency: number; readonly level: number } | null;
  /** The frequency in Hz above which the curve stays 3 dB under its level at 200 Hz; null where it never does. */
  readonly cutoff: number | null;
}

export const REFERENCE_HZ = 200;
const CUTOFF_POWER = powerFromDecibels(-3);
/** A cutoff is sought two octaves and more past hearing, since a bare single coil reaches beyond 20 kHz. */
const SEARCH_TOP_HZ = 100_000;
const SEARCH_POINTS = 256;

const AUDIO_TOP_HZ = 20_000;

const GRID = logSpaced(20, SEARCH_TOP_HZ, SEARCH_POINTS);
/** The last sample about which a peak within hearing may stand. */
const LAST_HEARD = GRID.findIndex((hertz) => hertz > AUDIO_TOP_HZ);
/** Surely under the least peak, whatever the reference is off. */
const SURELY_NO_PEAK = powerFromDecibels(0.8 * MIN_PEAK_DB);

const referenceOn = (curve: PowerCurve): Reference => ({
  power: curve.at(REFERENCE_HZ),
  off: curve.offAt(REFERENCE_HZ),
});

/** Under silence nothing is left to fall to. */
function cutoffTarget({ power, off }: Reference): Reference {
  const target = CUTOFF_POWER * power;
  return target > SILENT_POWER ? { power: target, off: CUTOFF_POWER * off } : { power: SILENT_POWER, off: 0 };
}

/**
 * Finds peak and cutoff of a curve, whatever frequencies it is shown at; six digits and a ten-thousandth of a dB, the same however the
 * curve was computed. A curve silent at 200 Hz has neither.
 */
export function findFeatures(curve: PowerCurve): Features {
  const quick = referenceOn(curve);
  const isSure = Math.abs(quick.power - SILENT_POWER) > quick.off;
  const reference = isSure || !curve.exact ? quick : referenceOn(curve.exact());
  if (reference.power < SILENT_POWER) return { peak: null, cutoff: null };
  const powers = new GridPowers(curve, GRID);
  return { peak: peakOf(curve, powers, reference), cutoff: cutoffOf(curve, powers, reference) };
}

/** The highest of all; of two that are as high as each other, the lower one. */
function peakOf(curve: PowerCurve, powers: GridPowers, reference: Reference): Features["peak"] {
  const least = Math.max(SURELY_NO_PEAK * reference.power, highestSample(powers, 1, LAST_HEARD - 1));
  let highest: Features["peak"] = null;
  for (const top of maximaReaching(powers, 1, LAST_HEARD, least)) {
    const peak = peakAbout(curve, top, reference);
    if (peak && peak.frequency <= AUDIO_TOP_HZ && peak.level > (highest?.level ?? 0)) highest = peak;
  }
  return highest;
}

function peakAbout(curve: PowerCurve, top: number, reference: Reference): Features["peak"] {
  const { place, peak } = peakBetween(curve, betweenNeighbours(curve, GRID, top), reference);
  if (peak !== undefined || !curve.exact) return peak ?? null;
  const exact = curve.exact();
  const between = betweenReach(exact, place) ?? betweenNeighbours(exact, GRID, top);
  return peakBetween(exact, between, referenceOn(exact)).peak ?? null;
}

function cutoffOf(curve: PowerCurve, powers: GridPowers, reference: Reference): number | null {
  const target = cutoffTarget(reference);
  const last = lastReaching(powers, GRID.length, target);
  if (last === GRID.length - 1) return null;
  const onGrid =
    lastSummit(curve, powers, last, target) ?? (last < 0 ? undefined : ([GRID[last]!, GRID[last + 1]!] as const));
  if (!onGrid) return null;
  const { place, frequency } = crossingOn(curve, onGrid, target);
  if (frequency !== undefined || !curve.exact) return frequency ?? null;
  const exact = curve.exact();
  const exactTarget = cutoffTarget(referenceOn(exact));
  return crossingOn(exact, crossingReach(exact, place, exactTarget) ?? onGrid, exactTarget).frequency ?? null;
}

/** Past the last sample that reaches the target, the last summit between samples that does, and the sample after it. */
function lastSummit(curve: PowerCurve, powers: GridPowers, last: number, target: Reference) {
  for (const top of maximaReaching(powers, Math.max(last, 0) + 1, GRID.length - 2, target.power).reverse()) {
    const summit = maximumOn(curve, GRID, top, target);
    if (summit !== undefined) return [summit, GRID[top + 1]!] as const;
  }
  return undefined;
}
