import { logSpaced } from "./frequencies.ts";

/** Level in dB at each frequency. */
export type LevelAt = (frequenciesHz: Float64Array) => Float64Array;

export interface Features {
  /** The highest resonance above the level at 200 Hz: frequency in Hz, level in dB above that level. */
  readonly peak: { readonly frequency: number; readonly level: number } | null;
  /** The frequency in Hz above which the curve stays 3 dB under its level at 200 Hz; null where it never does. */
  readonly cutoff: number | null;
}

export const REFERENCE_HZ = 200;
const CUTOFF_DB = -3;
const AUDIO_TOP_HZ = 20_000;
/** A cutoff is sought two octaves and more past hearing, since a bare single coil reaches beyond 20 kHz. */
const SEARCH_TOP_HZ = 100_000;
const SEARCH_POINTS = 400;
const REFINEMENTS = 3;
const REFINED_POINTS = 33;
/** Smaller rises than this are the plateau itself bending, not a resonance that anybody would call a peak. */
const MIN_PEAK_DB = 0.1;

const GRID = logSpaced(20, SEARCH_TOP_HZ, SEARCH_POINTS);

function highestLocalMaximum(level: Float64Array): number | undefined {
  let best: number | undefined;
  for (let i = 1; i < level.length - 1 && GRID[i]! <= AUDIO_TOP_HZ; i++) {
    const isMaximum = level[i]! > level[i - 1]! && level[i]! >= level[i + 1]!;
    if (isMaximum && (best === undefined || level[i]! > level[best]!)) best = i;
  }
  return best;
}

function refineMaximum(levelAt: LevelAt, from: number, to: number): { frequency: number; level: number } {
  let [low, high] = [from, to];
  for (let round = 0; ; round++) {
    const frequencies = logSpaced(low, high, REFINED_POINTS);
    const level = levelAt(frequencies);
    const best = level.reduce((top, value, i) => (value > level[top]! ? i : top), 0);
    if (round === REFINEMENTS) return { frequency: frequencies[best]!, level: level[best]! };
    low = frequencies[Math.max(0, best - 1)]!;
    high = frequencies[Math.min(REFINED_POINTS - 1, best + 1)]!;
  }
}

function refineCrossing(levelAt: LevelAt, from: number, to: number, target: number): number {
  let [low, high] = [from, to];
  for (let round = 0; round <= REFINEMENTS; round++) {
    const frequencies = logSpaced(low, high, REFINED_POINTS);
    const level = levelAt(frequencies);
    const last = level.findLastIndex((value) => value >= target);
    low = frequencies[Math.max(0, last)]!;
    high = frequencies[Math.min(REFINED_POINTS - 1, last + 1)]!;
  }
  return Math.sqrt(low * high);
}

/** Finds peak and cutoff of a curve, whatever frequencies it is shown at. */
export function findFeatures(levelAt: LevelAt): Features {
  const reference = levelAt(Float64Array.of(REFERENCE_HZ))[0]!;
  const level = levelAt(GRID);
  const top = highestLocalMaximum(level);
  const refined = top === undefined ? undefined : refineMaximum(levelAt, GRID[top - 1]!, GRID[top + 1]!);
  const rise = refined === undefined ? 0 : refined.level - reference;
  const target = reference + CUTOFF_DB;
  const last = level.findLastIndex((value) => value >= target);
  const falls = last >= 0 && last < level.length - 1;
  return {
    peak: refined && rise > MIN_PEAK_DB ? { frequency: refined.frequency, level: rise } : null,
    cutoff: falls ? refineCrossing(levelAt, GRID[last]!, GRID[last + 1]!, target) : null,
  };
}
