import { kWeighting } from "../k-weighting.ts";
import { weightedEnergies } from "../weighted-energy.ts";

/** A sound in frames of 5 ms: mean squares, K-weighted and of its treble alone. */
export interface Frames {
  readonly seconds: number;
  readonly weighted: Float64Array;
  /** Above about 1 kHz, where a plectrum shows and hum hardly does. */
  readonly treble: Float64Array;
}

export const FRAME_SECONDS = 0.005;
const TREBLE_HZ = 1000;

/** Two one-pole high-passes in a row. */
function trebleEnergies(samples: Float32Array, edges: readonly number[], sampleRateHz: number): Float64Array {
  const keep = Math.exp((-2 * Math.PI * TREBLE_HZ) / sampleRateHz);
  const energies = new Float64Array(edges.length - 1);
  let [low, lower] = [0, 0];
  for (let frame = 0; frame < energies.length; frame++) {
    let energy = 0;
    for (let n = edges[frame]!; n < edges[frame + 1]!; n++) {
      low += (1 - keep) * (samples[n]! - low);
      const once = samples[n]! - low;
      lower += (1 - keep) * (once - lower);
      energy += (once - lower) ** 2;
    }
    energies[frame] = energy;
  }
  return energies;
}

export function framesOf(samples: Float32Array, sampleRateHz: number): Frames {
  const count = Math.floor(samples.length / (FRAME_SECONDS * sampleRateHz));
  const edges = Array.from({ length: count + 1 }, (_, frame) => Math.round(frame * FRAME_SECONDS * sampleRateHz));
  const perSample = (energies: Float64Array) =>
    energies.map((energy, frame) => energy / (edges[frame + 1]! - edges[frame]!));
  if (count === 0) return { seconds: 0, weighted: new Float64Array(0), treble: new Float64Array(0) };
  return {
    seconds: count * FRAME_SECONDS,
    weighted: perSample(weightedEnergies(samples, edges, kWeighting(sampleRateHz), sampleRateHz)),
    treble: perSample(trebleEnergies(samples, edges, sampleRateHz)),
  };
}

/** Sums up to each frame, so that the mean of any stretch is a difference. */
export function runningMeans(values: Float64Array): (from: number, to: number) => number {
  const sums = new Float64Array(values.length + 1);
  for (let frame = 0; frame < values.length; frame++) sums[frame + 1] = sums[frame]! + values[frame]!;
  return (from, to) => {
    const [low, high] = [Math.max(0, from), Math.min(values.length, to)];
    return high > low ? Math.max(0, (sums[high]! - sums[low]!) / (high - low)) : 0;
  };
}
