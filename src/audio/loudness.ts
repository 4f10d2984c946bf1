import { type Biquad, kWeighting } from "./k-weighting.ts";
import type { Sound } from "./sound.ts";

const STEP_SECONDS = 0.1;
/** A gating block is 400 ms, four steps, so that blocks overlap by 75 %. */
const STEPS_PER_BLOCK = 4;
/** By then what came before has died to e⁻⁴⁸ in the high-pass, whose two poles of 38 Hz are the slowest: under any rounding. */
const WARM_UP_SECONDS = 0.2;
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
  const lanes = lanesOf(edges, sound.sampleRateHz);
  const sections = kWeighting(sound.sampleRateHz);
  for (const samples of sound.channels) addEnergies(energies, samples, edges, sections, lanes);
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

/** Two stretches of a channel that are weighted side by side, since one alone waits for its own feedback most of the time. */
interface Lanes {
  /** Of the second lane's samples behind the first's. */
  readonly offset: number;
  readonly length: number;
  /** The first step that counts from the second lane. */
  readonly secondFrom: number;
}

function lanesOf(edges: readonly number[], sampleRateHz: number): Lanes {
  const steps = edges.length - 1;
  const end = edges[steps]!;
  const half = Math.floor(steps / 2);
  const offset = edges[half]! - Math.ceil(WARM_UP_SECONDS * sampleRateHz);
  // A short sound goes through the first lane alone.
  if (offset <= 0) return { offset: 0, length: end, secondFrom: steps };
  return { offset, length: end - offset, secondFrom: half };
}

function addEnergies(
  energies: Float64Array,
  samples: Float32Array,
  edges: readonly number[],
  sections: readonly [Biquad, Biquad],
  { offset, length, secondFrom }: Lanes,
): void {
  const state = new Float64Array(8);
  const end = edges[energies.length]!;
  let first = 0;
  let second = edges.findLastIndex((edge) => edge <= offset);
  for (let at = 0; at < length; ) {
    const until = Math.min(edges[first + 1] ?? end, (edges[second + 1] ?? end) - offset, length);
    const [a, b] = weightedEnergies(state, samples, at, until, offset, sections);
    if (first < secondFrom) energies[first]! += a;
    if (second >= secondFrom) energies[second]! += b;
    if (until === edges[first + 1]) first++;
    if (until + offset === edges[second + 1]) second++;
    at = until;
  }
}

/** Energies of the K-weighted samples `from` to `to`, and of those `offset` behind, each going on from its own state. */
function weightedEnergies(
  state: Float64Array,
  samples: Float32Array,
  from: number,
  to: number,
  offset: number,
  [shelf, highPass]: readonly [Biquad, Biquad],
): readonly [number, number] {
  // The high-pass has zeros at 1 alone, so all but its gain, which the shelf takes on, are additions.
  const b0 = shelf.b0 * highPass.b0;
  const b1 = shelf.b1 * highPass.b0;
  const b2 = shelf.b2 * highPass.b0;
  const { a1, a2 } = shelf;
  const { a1: c1, a2: c2 } = highPass;
  // Transposed direct form II: two states a section, kept in locals because the loop runs for every sample of a set.
  let s1 = state[0]!;
  let s2 = state[1]!;
  let h1 = state[2]!;
  let h2 = state[3]!;
  let t1 = state[4]!;
  let t2 = state[5]!;
  let g1 = state[6]!;
  let g2 = state[7]!;
  let first = 0;
  let second = 0;
  for (let n = from; n < to; n++) {
    const x = samples[n]!;
    const w = samples[n + offset]!;
    const shelved = b0 * x + s1;
    const shelvedToo = b0 * w + t1;
    s1 = b1 * x + s2 - a1 * shelved;
    t1 = b1 * w + t2 - a1 * shelvedToo;
    s2 = b2 * x - a2 * shelved;
    t2 = b2 * w - a2 * shelvedToo;
    const y = shelved + h1;
    const z = shelvedToo + g1;
    h1 = h2 - (shelved + shelved) - c1 * y;
    g1 = g2 - (shelvedToo + shelvedToo) - c1 * z;
    h2 = shelved - c2 * y;
    g2 = shelvedToo - c2 * z;
    first += y * y;
    second += z * z;
  }
  state.set([s1, s2, h1, h2, t1, t2, g1, g2]);
  // Denormal numbers after the end of a note would slow the loop a hundredfold.
  for (let i = 0; i < state.length; i++) if (Math.abs(state[i]!) < 1e-30) state[i] = 0;
  return [first, second];
}
