import type { Settings } from "../../build-file/settings.ts";
import { curveFor, featuresFor, type Guard } from "../guard.ts";
import { DEFAULT_DRAWS, DEFAULT_SEED, type DrawOptions, drawGuards } from "./draws.ts";
import { type EndSpread, endSpreadsOf } from "./end-spread.ts";
import { LEVELS, type Percentiles, percentiles, quantile } from "./percentiles.ts";
import { type SpreadValue, spreadOf } from "./spread.ts";

export interface ToleranceBands {
  readonly draws: number;
  readonly seed: number;
  readonly frequencies: Float64Array;
  /** dB, as the build says. */
  readonly nominal: Float64Array;
  /** dB; 5 %, 50 % and 95 % of the draws lie under these. */
  readonly low: Float64Array;
  readonly middle: Float64Array;
  readonly high: Float64Array;
  /** Hz and dB over the draws that have a peak; null where none has. */
  readonly peak: { readonly frequency: Percentiles; readonly level: Percentiles } | null;
  /** The fraction of draws that have a peak. */
  readonly peakShare: number;
  /** Hz over the draws that have a cutoff; null where none has. */
  readonly cutoff: Percentiles | null;
  readonly spread: readonly SpreadValue[];
  readonly ends: readonly EndSpread[];
}

interface Draws {
  readonly curves: Float64Array[];
  readonly peaks: { frequency: number; level: number }[];
  readonly cutoffs: number[];
}

function collect(
  guard: Guard,
  settings: Settings,
  frequencies: Float64Array,
  { draws, seed, celsius, checkpoint }: Required<DrawOptions>,
): Draws {
  const collected: Draws = { curves: [], peaks: [], cutoffs: [] };
  for (const drawn of drawGuards(guard, draws, seed, celsius)) {
    checkpoint();
    const transfers = drawn.transfers(settings);
    collected.curves.push(curveFor(transfers, frequencies));
    const { peak, cutoff } = featuresFor(transfers);
    if (peak) collected.peaks.push(peak);
    if (cutoff !== null) collected.cutoffs.push(cutoff);
  }
  return collected;
}

/**
 * What the tolerances of a build's parts do to its curve in one setting: a seeded Monte Carlo.
 * @param frequencies Hz
 */
export function toleranceBands(
  guard: Guard,
  settings: Settings,
  frequencies: Float64Array,
  { draws = DEFAULT_DRAWS, seed = DEFAULT_SEED, celsius, checkpoint = () => {} }: DrawOptions = {},
): ToleranceBands {
  const { curves, peaks, cutoffs } = collect(guard, settings, frequencies, { draws, seed, celsius, checkpoint });
  const bands = LEVELS.map(() => new Float64Array(frequencies.length));
  const column = new Float64Array(draws);
  for (let i = 0; i < frequencies.length; i++) {
    for (let draw = 0; draw < draws; draw++) column[draw] = curves[draw]![i]!;
    column.sort();
    for (const [level, band] of bands.entries()) band[i] = quantile(column, LEVELS[level]!);
  }
  const [low, middle, high] = bands as [Float64Array, Float64Array, Float64Array];
  const frequency = percentiles(peaks.map((peak) => peak.frequency));
  const level = percentiles(peaks.map((peak) => peak.level));
  const nominal = curveFor(guard.transfers(settings), frequencies);
  return {
    draws,
    seed,
    frequencies,
    nominal,
    low,
    middle,
    high,
    peak: frequency && level ? { frequency, level } : null,
    peakShare: peaks.length / draws,
    cutoff: percentiles(cutoffs),
    spread: spreadOf(guard.build, celsius),
    ends: endSpreadsOf(guard.build),
  };
}
