import type { Biquad } from "./k-weighting.ts";
import { LANE_CHUNK, LANES, SAMPLES, WEIGHTING } from "./simd/kernels.ts";
import { type SoundKernel, soundKernel } from "./simd/sound-kernel.ts";

/** By then what came before has died to e⁻⁴⁸ in the high-pass, whose two poles of 38 Hz are the slowest: under any rounding. */
const WARM_UP_SECONDS = 0.2;
/** Four lanes of a shorter sound would mostly be warming up. */
const FEWEST_STEPS = 16;
const NEGLIGIBLE = 1e-30;

export type Sections = readonly [shelf: Biquad, highPass: Biquad];

/**
 * Energy of the K-weighted samples between each edge and the next, edges rising from 0 and within the sound; by plain arithmetic
 * where `kernel` is null.
 */
export function weightedEnergies(
  samples: Float32Array,
  edges: readonly number[],
  sections: Sections,
  sampleRateHz: number,
  kernel: SoundKernel | null = soundKernel,
): Float64Array {
  if (!kernel || edges.length <= FEWEST_STEPS) return plainEnergies(samples, edges, sections);
  return quickEnergies(samples, edges, sections, Math.ceil(WARM_UP_SECONDS * sampleRateHz), kernel);
}

function plainEnergies(samples: Float32Array, edges: readonly number[], [s, h]: Sections): Float64Array {
  const energies = new Float64Array(edges.length - 1);
  const { b0: sb0, b1: sb1, b2: sb2, a1: sa1, a2: sa2 } = s;
  const { b0: hb0, b1: hb1, b2: hb2, a1: ha1, a2: ha2 } = h;
  // Transposed direct form II.
  let [s1, s2, h1, h2] = [0, 0, 0, 0];
  for (let step = 0; step < energies.length; step++) {
    let energy = 0;
    for (let n = edges[step]!; n < edges[step + 1]!; n++) {
      const x = samples[n]!;
      const shelved = sb0 * x + s1;
      s1 = sb1 * x - sa1 * shelved + s2;
      s2 = sb2 * x - sa2 * shelved;
      const y = hb0 * shelved + h1;
      h1 = hb1 * shelved - ha1 * y + h2;
      h2 = hb2 * shelved - ha2 * y;
      energy += y * y;
    }
    energies[step] = energy;
    // Denormal numbers after the end of a note would slow the loop a hundredfold.
    if (Math.abs(s1) + Math.abs(s2) + Math.abs(h1) + Math.abs(h2) < NEGLIGIBLE) s1 = s2 = h1 = h2 = 0;
  }
  return energies;
}

/** A stretch of the sound that goes through the filters beside three others, after a run-up that does not count. */
interface Lane {
  readonly offset: number;
  readonly firstStep: number;
  readonly endStep: number;
  /** The step that it is in. */
  step: number;
}

function lanesOf(edges: readonly number[], warmUp: number): Lane[] {
  const steps = edges.length - 1;
  return Array.from({ length: LANES }, (_, lane) => {
    const firstStep = Math.floor((steps * lane) / LANES);
    const offset = Math.max(0, edges[firstStep]! - warmUp);
    const endStep = Math.floor((steps * (lane + 1)) / LANES);
    return { offset, firstStep, endStep, step: edges.findLastIndex((edge) => edge <= offset) };
  });
}

/** Spreads the coefficients over both doubles of a vector, and forgets what was weighted before. */
function prepare({ doubles }: SoundKernel, [shelf, highPass]: Sections): void {
  const gain = highPass.b0;
  const { b0, b1, b2, a1, a2 } = shelf;
  const coefficients = [b0 * gain, b1 * gain, b2 * gain, a1, a2, highPass.a1, highPass.a2];
  coefficients.forEach((value, k) => {
    doubles.fill(value, WEIGHTING.coefficients / 8 + 2 * k, WEIGHTING.coefficients / 8 + 2 * k + 2);
  });
  doubles.fill(0, WEIGHTING.memory / 8, WEIGHTING.energies / 8);
}

function quickEnergies(
  samples: Float32Array,
  edges: readonly number[],
  sections: Sections,
  warmUp: number,
  kernel: SoundKernel,
): Float64Array {
  prepare(kernel, sections);
  const memory = kernel.doubles.subarray(WEIGHTING.memory / 8, WEIGHTING.energies / 8);
  const laneEnergies = kernel.doubles.subarray(WEIGHTING.energies / 8, WEIGHTING.energies / 8 + LANES);
  const energies = new Float64Array(edges.length - 1);
  const lanes = lanesOf(edges, warmUp);
  const length = Math.max(...lanes.map(({ offset, endStep }) => edges[endStep]! - offset));
  for (let at = 0; at < length; ) {
    // As far as every lane stays in its step; a lane that is through goes on through the rest or silence, and counts no more.
    const nextEdges = lanes.map(({ offset, step }) => (edges[step + 1] ?? Number.POSITIVE_INFINITY) - offset);
    const until = Math.min(at + LANE_CHUNK, length, ...nextEdges);
    lanes.forEach(({ offset }, lane) => void fillLane(kernel, lane, samples, offset + at, until - at));
    laneEnergies.fill(0);
    kernel.weightedEnergies(SAMPLES, SAMPLES + 4 * (until - at));
    lanes.forEach((lane, index) => {
      if (lane.step >= lane.firstStep && lane.step < lane.endStep) energies[lane.step]! += laneEnergies[index]!;
      if (until === nextEdges[index]) lane.step++;
    });
    for (let k = 0; k < memory.length; k++) if (Math.abs(memory[k]!) < NEGLIGIBLE) memory[k] = 0;
    at = until;
  }
  return energies;
}

function fillLane({ floats }: SoundKernel, lane: number, samples: Float32Array, from: number, count: number): void {
  const to = SAMPLES / 4 + lane * LANE_CHUNK;
  const there = samples.subarray(from, from + count);
  floats.set(there, to);
  floats.fill(0, to + there.length, to + count);
}
