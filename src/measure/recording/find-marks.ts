import { MARK_SECONDS, MARKS } from "../signal/layout.ts";
import { markAt } from "../signal/mark.ts";
import { correlate } from "./correlate.ts";

/** A chirp in unrelated sound comes to a fifth of this; a coil's slope and peak leave more than twice of it. */
const LEAST_LIKENESS = 0.35;
/** Marks stand further apart than this. */
const APART_SECONDS = 3;

function peaks(likeness: Float64Array, apart: number): number[] {
  const tops: number[] = [];
  for (let n = 1; n < likeness.length - 1; n += 1) {
    const here = Math.abs(likeness[n]!);
    if (here < LEAST_LIKENESS || here < Math.abs(likeness[n - 1]!) || here < Math.abs(likeness[n + 1]!)) continue;
    const last = tops.at(-1);
    if (last === undefined || n - last > apart) tops.push(n);
    else if (here > Math.abs(likeness[last]!)) tops[tops.length - 1] = n;
  }
  return tops;
}

/** Where the parabola through a peak and its neighbours is highest, in samples. */
function between(likeness: Float64Array, n: number): number {
  const [before, here, after] = [likeness[n - 1]!, likeness[n]!, likeness[n + 1]!];
  const curve = before - 2 * here + after;
  return curve === 0 ? n : n + (before - after) / (2 * curve);
}

/** A coil turns the phases of a mark, so that its likeness to what was played has neighbouring peaks hardly lower: so far off. */
const DOUBT_SECONDS = 4e-4;

/** By how many samples a mark comes later than it was taken to, by its likeness to the first as recorded: one peak, and no other. */
function later(samples: Float32Array, first: number, taken: number, length: number, doubt: number): number {
  const likeness = Float64Array.from({ length: 2 * doubt + 3 }, (_, k) => {
    const shift = taken - first + k - doubt - 1;
    let sum = 0;
    for (let n = first; n < first + length; n += 1) sum += samples[n]! * (samples[n + shift] ?? 0);
    return sum;
  });
  const inner = likeness.subarray(1, -1);
  const top = inner.indexOf(Math.max(...inner)) + 1;
  return between(likeness, top) - doubt - 1;
}

/**
 * When the marks begin, in seconds of the recording by its own clock, all as much too late as the first; fewer than there should be
 * where some are not found.
 * @param stretch how much longer than played the signal is expected to be
 */
export function findMarks(samples: Float32Array, sampleRateHz: number, stretch = 1): number[] {
  const length = Math.floor(MARK_SECONDS * stretch * sampleRateHz);
  const template = Float64Array.from({ length }, (_, n) => markAt(n / (sampleRateHz * stretch)));
  const likeness = correlate(samples, template);
  const found = peaks(likeness, APART_SECONDS * stretch * sampleRateHz);
  const best = found.sort((a, b) => Math.abs(likeness[b]!) - Math.abs(likeness[a]!)).slice(0, MARKS.length);
  const [first, ...others] = best.sort((a, b) => a - b);
  if (first === undefined) return [];
  const doubt = Math.ceil(DOUBT_SECONDS * sampleRateHz);
  const refined = others.map((n) => n + later(samples, first, n, length, doubt));
  return [first, ...refined].map((n) => n / sampleRateHz);
}
