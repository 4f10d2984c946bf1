import { BLOCK, type Timeline } from "./timeline.ts";

/** One partial of one note in one plane: its motion is the string's, only the weights are the coils'. */
export interface Mode {
  readonly radiansPerSecond: number;
  readonly decayPerSecond: number;
  readonly amplitude: number;
  /** What a force of energy 1 at the start adds to it, in the mean. */
  readonly drive: number;
  /** Volts per unit motion, one for each coil; the two planes of a partial share one list. */
  readonly weights: Float64Array;
}

/**
 * A mode on its way: e^(−σt)·(sine·sin ωt + cosine·cos ωt). What drives it at the start changes both. Its two last samples and the
 * two coefficients of y[i+1] = first·y[i] − second·y[i−1] go with it, first = 2r·cosθ and second = r².
 */
export interface Voice {
  readonly mode: Mode;
  sine: number;
  cosine: number;
  /** Of its decay, below which it is no longer heard. */
  leastExponent: number;
  current: number;
  previous: number;
  first: number;
  second: number;
}

export function voiceOf(mode: Mode): Voice {
  const leastExponent = Number.NEGATIVE_INFINITY;
  return { mode, sine: mode.amplitude, cosine: 0, leastExponent, current: 0, previous: 0, first: 0, second: 0 };
}

/** Takes the place of a voice where there is none. @param coils their number */
export function silentVoice(coils: number): Voice {
  const weights = new Float64Array(coils);
  return voiceOf({ radiansPerSecond: 0, decayPerSecond: 0, amplitude: 0, drive: 0, weights });
}

export function exponentAt(mode: Mode, time: Timeline, edge: number): number {
  return -mode.decayPerSecond * time.seconds[edge]! - time.damping[edge]!;
}

/** Radians of a mode from sample to sample within a block. */
export function stepOf(mode: Mode, time: Timeline, block: number): number {
  return (mode.radiansPerSecond * (time.bentSeconds[block + 1]! - time.bentSeconds[block]!)) / BLOCK;
}

/**
 * Sets a voice to a decaying sine at the start of a block, exactly, so that no error builds up. Velocity after a displacement pluck
 * is a sine: every partial starts from zero, no onset clicks.
 */
export function startVoice(voice: Voice, time: Timeline, block: number): void {
  const { mode, sine, cosine } = voice;
  const phase = mode.radiansPerSecond * time.bentSeconds[block]!;
  const step = stepOf(mode, time, block);
  const exponent = exponentAt(mode, time, block);
  const ratio = Math.exp((exponentAt(mode, time, block + 1) - exponent) / BLOCK);
  const [sin, cos, scale] = [Math.sin(phase), Math.cos(phase), Math.exp(exponent)];
  const [sinStep, cosStep] = [Math.sin(step), Math.cos(step)];
  const current = sine * sin + cosine * cos;
  const ahead = sine * cos - cosine * sin;
  voice.first = 2 * ratio * cosStep;
  voice.second = ratio * ratio;
  voice.previous = (scale / ratio) * (current * cosStep - ahead * sinStep);
  voice.current = scale * current;
}
