import { type Biquad, kWeighting } from "./k-weighting.ts";
import type { Sound } from "./sound.ts";

const STEP_SECONDS = 0.1;
/** A gating block is 400 ms, four steps, so that blocks overlap by 75 %. */
const STEPS_PER_BLOCK = 4;
const ABSOLUTE_GATE_LUFS = -70;
const RELATIVE_GATE_LU = -10;
const OFFSET_DB = -0.691;

/**
 * Integrated loudness by ITU-R BS.1770-4, gated, in LUFS; one or two channels, each with weight 1. Null where nothing is louder
 * than the absolute gate of −70 LUFS, silence included. A sound shorter than one gating block of 400 ms is measured as a single
 * block as long as it is, an extension for clicks and single muted notes, which the standard leaves without a value.
 */
export function integratedLoudness(sound: Sound): number | null {
  const powers = blockPowers(sound).filter((power) => loudnessOf(power) > ABSOLUTE_GATE_LUFS);
  if (powers.length === 0) return null;
  const gate = loudnessOf(mean(powers)) + RELATIVE_GATE_LU;
  return loudnessOf(mean(powers.filter((power) => loudnessOf(power) > gate)));
}

function loudnessOf(power: number): number {
  return OFFSET_DB + 10 * Math.log10(power);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** K-weighted power of each gating block, the channels' summed. */
function blockPowers(sound: Sound): number[] {
  const frames = sound.channels[0]?.length ?? 0;
  const edges = stepEdges(frames, sound.sampleRateHz);
  const energies = new Float64Array(edges.length - 1);
  for (const samples of sound.channels) addEnergies(energies, samples, edges, kWeighting(sound.sampleRateHz));
  const span = Math.min(STEPS_PER_BLOCK, energies.length);
  const powers: number[] = [];
  for (let first = 0; first + span <= energies.length; first++) {
    const energy = energies.subarray(first, first + span).reduce((sum, value) => sum + value, 0);
    powers.push(energy / (edges[first + span]! - edges[first]!));
  }
  return powers;
}

/** Ends of the whole 100 ms steps, rounded to samples; the whole sound is one step where it is shorter than a block. */
function stepEdges(frames: number, sampleRateHz: number): number[] {
  const edge = (step: number) => Math.round(step * STEP_SECONDS * sampleRateHz);
  if (frames === 0) return [0];
  if (frames < edge(STEPS_PER_BLOCK)) return [0, frames];
  const edges: number[] = [];
  for (let step = 0; edge(step) <= frames; step++) edges.push(edge(step));
  return edges;
}

function addEnergies(
  energies: Float64Array,
  samples: Float32Array,
  edges: readonly number[],
  sections: readonly [Biquad, Biquad],
): void {
  const [s, h] = sections;
  const { b0: sb0, b1: sb1, b2: sb2, a1: sa1, a2: sa2 } = s;
  const { b0: hb0, b1: hb1, b2: hb2, a1: ha1, a2: ha2 } = h;
  // Transposed direct form II: two states a section, kept in locals because the loop runs for every sample of a set.
  let s1 = 0;
  let s2 = 0;
  let h1 = 0;
  let h2 = 0;
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
    energies[step]! += energy;
    // Denormal numbers after the end of a note would slow the loop a hundredfold.
    if (Math.abs(s1) + Math.abs(s2) + Math.abs(h1) + Math.abs(h2) < 1e-30) s1 = s2 = h1 = h2 = 0;
  }
}
