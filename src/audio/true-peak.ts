import { BEND_SHARE, peakBetween, REACH, SAMPLE_SHARE, STEP_SHARE } from "./points-between.ts";
import type { Sound } from "./sound.ts";

/** Samples looked at together; more than REACH, so that a point between is reached from its own section and the two beside it. */
const SECTION = 32;
/** The waveform rises before the sound and falls after it, within a section of silence: that one, and one more in its reach. */
const SILENT = 2;

/** Largest magnitude of the waveform between and at the samples, four times oversampled; 1 is full scale, silence gives 0. */
export function truePeak(sound: Sound): number {
  return sound.channels.reduce((peak, samples) => Math.max(peak, channelPeak(samples)), 0);
}

/** Oversamples only where bounds of rising cost leave a higher peak possible: two or three sections in all of a plucked note. */
function channelPeak(samples: Float32Array): number {
  const largest = largestInSections(samples);
  let peak = 0;
  for (let k = 0; k < largest.length; k++) peak = Math.max(peak, largest[k]!);
  const worthALook = peak / SAMPLE_SHARE;
  const slack = 2 * STEP_SHARE * peak;
  const near = new Float64Array(SECTION + 2 * REACH);
  for (let k = 1; k + 1 < largest.length; k++) {
    const neighbours = Math.max(largest[k]!, largest[k + 1]!);
    if (neighbours <= worthALook && largest[k - 1]! <= worthALook) continue;
    const first = (k - SILENT) * SECTION - (REACH - 1);
    const reach = BEND_SHARE * sharpestBend(samples, first, first + near.length) + slack;
    if (neighbours + reach <= peak) continue;
    copyAround(near, samples, first);
    peak = Math.max(peak, peakBetween(near, SECTION, peak - reach));
  }
  return peak;
}

/** The largest |x[n]| of every SECTION samples, and zeros for SILENT sections before and after. */
function largestInSections(samples: Float32Array): Float32Array {
  const sections = Math.ceil(samples.length / SECTION);
  const all = new Float32Array(sections + 2 * SILENT);
  for (let section = 0; section < sections; section++) {
    const end = Math.min(samples.length, (section + 1) * SECTION);
    let largest = 0;
    for (let n = section * SECTION; n < end; n++) {
      const size = Math.abs(samples[n]!);
      if (size > largest) largest = size;
    }
    all[section + SILENT] = largest;
  }
  return all;
}

/** The samples from `first` on, silence outside the sound. */
function copyAround(near: Float64Array, samples: Float32Array, first: number): void {
  const from = Math.max(0, -first);
  const to = Math.min(near.length, samples.length - first);
  if (from > 0 || to < near.length) near.fill(0);
  for (let k = from; k < to; k++) near[k] = samples[first + k]!;
}

/** The largest |x[n−1] − 2x[n] + x[n+1]| from one sample to another; without bound where the silence outside the sound is one of them. */
function sharpestBend(samples: Float32Array, first: number, end: number): number {
  if (first < 0 || end > samples.length) return Number.POSITIVE_INFINITY;
  let sharpest = 0;
  for (let n = first + 1; n + 1 < end; n++) {
    const bend = Math.abs(samples[n - 1]! - 2 * samples[n]! + samples[n + 1]!);
    if (bend > sharpest) sharpest = bend;
  }
  return sharpest;
}
