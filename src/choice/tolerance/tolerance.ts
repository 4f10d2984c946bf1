import type { Settings } from "../../build-file/settings.ts";
import { levelMatchedDifference } from "../compare/difference.ts";
import type { Drive } from "../drive.ts";
import { curveFor, energiesFor, featuresFor, type Guard } from "../guard.ts";
import { createUniform } from "../uniform.ts";
import { drawPatches, type SpreadValue, spreadOf } from "./spread.ts";

export const DEFAULT_DRAWS = 2000;
export const DEFAULT_SEED = 1;
/** 5 %, median, 95 %. */
const LEVELS = [0.05, 0.5, 0.95] as const;

export interface DrawOptions {
  readonly draws?: number;
  readonly seed?: number;
  /** Called between draws; may throw to give the work up. */
  readonly checkpoint?: () => void;
}

export interface Percentiles {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

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
}

/** The value below which a fraction of sorted values lies, straight lines between order statistics. */
function quantile(sorted: ArrayLike<number>, fraction: number): number {
  const place = fraction * (sorted.length - 1);
  const below = Math.floor(place);
  const lower = sorted[below]!;
  return lower + (place - below) * ((sorted[below + 1] ?? lower) - lower);
}

/** 5/50/95 % of values; null for an empty list. */
export function percentiles(values: readonly number[]): Percentiles | null {
  if (values.length === 0) return null;
  const sorted = Float64Array.from(values).sort();
  const [low, middle, high] = LEVELS.map((level) => quantile(sorted, level)) as [number, number, number];
  return { low, middle, high };
}

/** Guards built from one parts list, one after another, always the same for the same seed. */
export function* drawGuards(guard: Guard, draws: number, seed: number): Generator<Guard> {
  const spread = spreadOf(guard.build);
  const uniform = createUniform(seed);
  for (let draw = 0; draw < draws; draw++) yield guard.with(drawPatches(spread, uniform));
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
  { draws, seed, checkpoint }: Required<DrawOptions>,
): Draws {
  const collected: Draws = { curves: [], peaks: [], cutoffs: [] };
  for (const drawn of drawGuards(guard, draws, seed)) {
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
  { draws = DEFAULT_DRAWS, seed = DEFAULT_SEED, checkpoint = () => {} }: DrawOptions = {},
): ToleranceBands {
  const { curves, peaks, cutoffs } = collect(guard, settings, frequencies, { draws, seed, checkpoint });
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
    spread: spreadOf(guard.build),
  };
}

/** Largest level-matched band difference between two guards of the same list, in dB. */
export interface PairSpread {
  readonly median: number;
  /** 95 % of pairs differ by no more. */
  readonly high: number;
}

/**
 * How much two guards built from the same list differ in each setting, by the measure that comparisons use. The same guards
 * serve every setting; every guard is in one pair only.
 */
export function pairSpreads(
  guard: Guard,
  settings: readonly Settings[],
  drive: Drive,
  { draws = DEFAULT_DRAWS, seed = DEFAULT_SEED, checkpoint = () => {} }: DrawOptions = {},
): PairSpread[] {
  const differences = settings.map((): number[] => []);
  let waiting: Float64Array[] | undefined;
  for (const drawn of drawGuards(guard, draws, seed)) {
    checkpoint();
    const energies = settings.map((setting) => energiesFor(drawn.transfers(setting), drive));
    if (!waiting) {
      waiting = energies;
      continue;
    }
    for (const [index, first] of waiting.entries()) {
      const difference = levelMatchedDifference(first, energies[index]!);
      differences[index]!.push(difference.silent.includes(true) ? 0 : Math.abs(difference.largest.db));
    }
    waiting = undefined;
  }
  return differences.map((list) => {
    const { middle, high } = percentiles(list)!;
    return { median: middle, high };
  });
}
