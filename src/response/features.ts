import { powerDecibels, powerFromDecibels } from "../decibels.ts";
import { logSpaced } from "./frequencies.ts";

/** |H|² at a frequency in Hz. */
export type PowerAt = (frequencyHz: number) => number;

export interface Features {
  /** The highest resonance above the level at 200 Hz: frequency in Hz, level in dB above that level. */
  readonly peak: { readonly frequency: number; readonly level: number } | null;
  /** The frequency in Hz above which the curve stays 3 dB under its level at 200 Hz; null where it never does. */
  readonly cutoff: number | null;
}

export const REFERENCE_HZ = 200;
const CUTOFF_POWER = powerFromDecibels(-3);
const AUDIO_TOP_HZ = 20_000;
/** A cutoff is sought two octaves and more past hearing, since a bare single coil reaches beyond 20 kHz. */
const SEARCH_TOP_HZ = 100_000;
const SEARCH_POINTS = 256;
/** Relative width at which a search ends: far finer than any part is known. */
const PRECISION = 1e-7;
/** Smaller rises than this are the plateau itself bending, not a resonance that anybody would call a peak. */
const MIN_PEAK_DB = 0.25;

const GRID = logSpaced(20, SEARCH_TOP_HZ, SEARCH_POINTS);
const GOLDEN = (Math.sqrt(5) - 1) / 2;

function highestLocalMaximum(power: Float64Array): number | undefined {
  let best: number | undefined;
  for (let i = 1; i < power.length - 1 && GRID[i]! <= AUDIO_TOP_HZ; i++) {
    const isMaximum = power[i]! > power[i - 1]! && power[i]! >= power[i + 1]!;
    if (isMaximum && (best === undefined || power[i]! > power[best]!)) best = i;
  }
  return best;
}

/** Golden-section search for the maximum between two frequencies. */
function maximumBetween(powerAt: PowerAt, from: number, to: number): { frequency: number; power: number } {
  let [low, high] = [from, to];
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [atLeft, atRight] = [powerAt(left), powerAt(right)];
  while (high - low > PRECISION * high) {
    if (atLeft >= atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = powerAt(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = powerAt(right);
    }
  }
  return atLeft >= atRight ? { frequency: left, power: atLeft } : { frequency: right, power: atRight };
}

/** Bisection for the place where a power falls through a target. */
function crossingBetween(powerAt: PowerAt, from: number, to: number, target: number): number {
  let [low, high] = [from, to];
  while (high - low > PRECISION * high) {
    const middle = (low + high) / 2;
    if (powerAt(middle) >= target) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Finds peak and cutoff of a curve, whatever frequencies it is shown at. */
export function findFeatures(powerAt: PowerAt): Features {
  const reference = powerAt(REFERENCE_HZ);
  const power = GRID.map(powerAt);
  const top = highestLocalMaximum(power);
  const found = top === undefined ? undefined : maximumBetween(powerAt, GRID[top - 1]!, GRID[top + 1]!);
  const rise = found === undefined ? 0 : powerDecibels(found.power) - powerDecibels(reference);
  const target = reference * CUTOFF_POWER;
  const last = power.findLastIndex((value) => value >= target);
  const falls = last >= 0 && last < power.length - 1 && reference > 0;
  return {
    peak: found && rise > MIN_PEAK_DB ? { frequency: found.frequency, level: rise } : null,
    cutoff: falls ? crossingBetween(powerAt, GRID[last]!, GRID[last + 1]!, target) : null,
  };
}
