import { powerDecibels } from "../decibels.ts";
import { kWeighting } from "./k-weighting.ts";
import type { Sound } from "./sound.ts";
import { weightedEnergies } from "./weighted-energy.ts";

const STEP_SECONDS = 0.1;
/** A gating block is 400 ms, four steps, so that blocks overlap by 75 %. */
const STEPS_PER_BLOCK = 4;
const ABSOLUTE_GATE_LUFS = -70;
const RELATIVE_GATE_LU = -10;
const OFFSET_DB = -0.691;

/**
 * Integrated loudness by ITU-R BS.1770-4, gated, in LUFS, of the sound times `gain`; one or two channels, each with weight 1. Null where nothing is louder
 * than the absolute gate of −70 LUFS, silence included. A sound shorter than one gating block of 400 ms is measured as a single
 * block as long as it is, an extension for clicks and single muted notes, which the standard leaves without a value.
 */
export function integratedLoudness(sound: Sound, gain = 1): number | null {
  const powers = blockPowers(sound)
    .map((power) => power * gain * gain)
    .filter((power) => loudnessOf(power) > ABSOLUTE_GATE_LUFS);
  if (powers.length === 0) return null;
  const gate = loudnessOf(mean(powers)) + RELATIVE_GATE_LU;
  return loudnessOf(mean(powers.filter((power) => loudnessOf(power) > gate)));
}

function loudnessOf(power: number): number {
  return OFFSET_DB + powerDecibels(power);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** K-weighted power of each gating block, the channels' summed. */
function blockPowers(sound: Sound): number[] {
  const frames = sound.channels[0]?.length ?? 0;
  const edges = stepEdges(frames, sound.sampleRateHz);
  const energies = new Float64Array(edges.length - 1);
  const sections = kWeighting(sound.sampleRateHz);
  for (const samples of sound.channels) {
    const more = weightedEnergies(samples, edges, sections, sound.sampleRateHz);
    for (let step = 0; step < energies.length; step++) energies[step]! += more[step]!;
  }
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
