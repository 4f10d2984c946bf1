import { powerFromDecibels, SILENT_POWER } from "../decibels.ts";
import { crossingOn, crossingReach, lastReaching } from "./features/cutoff.ts";
import { GridPowers } from "./features/grid-powers.ts";
import { betweenNeighbours, betweenReach, highestLocalMaximum, peakBetween, type Reference } from "./features/peak.ts";
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

const GRID = logSpaced(20, SEARCH_TOP_HZ, SEARCH_POINTS);

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

function peakOf(curve: PowerCurve, powers: GridPowers, reference: Reference): Features["peak"] {
  const top = highestLocalMaximum(powers, GRID);
  if (top === undefined) return null;
  const { place, peak } = peakBetween(curve, betweenNeighbours(curve, GRID, top), reference);
  if (peak !== undefined || !curve.exact) return peak ?? null;
  const exact = curve.exact();
  const between = betweenReach(exact, place) ?? betweenNeighbours(exact, GRID, top);
  return peakBetween(exact, between, referenceOn(exact)).peak ?? null;
}

function cutoffOf(curve: PowerCurve, powers: GridPowers, reference: Reference): number | null {
  const last = lastReaching(powers, GRID.length, cutoffTarget(reference));
  if (last < 0 || last === GRID.length - 1) return null;
  const onGrid = [GRID[last]!, GRID[last + 1]!] as const;
  const { place, frequency } = crossingOn(curve, onGrid, cutoffTarget(reference));
  if (frequency !== undefined || !curve.exact) return frequency ?? null;
  const exact = curve.exact();
  const target = cutoffTarget(referenceOn(exact));
  return crossingOn(exact, crossingReach(exact, place, target) ?? onGrid, target).frequency ?? null;
}
