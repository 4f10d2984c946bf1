import { BLOCK, type Timeline } from "./timeline.ts";

/** One partial of one note in one plane: its motion is the string's, only the weights are the coils'. */
export interface Mode {
  readonly radiansPerSecond: number;
  readonly decayPerSecond: number;
  readonly amplitude: number;
  /** What a force of energy 1 at the start adds to it, in the mean. */
  readonly drive: number;
  /** Volts per unit motion, one for each coil. */
  readonly weights: Float64Array;
}

/** A mode on its way: e^(−σt)·(sine·sin ωt + cosine·cos ωt). What drives it at the start changes both. */
export interface Voice {
  readonly mode: Mode;
  sine: number;
  cosine: number;
  /** Of its decay, below which it is no longer heard. */
  readonly leastExponent: number;
}

/** The state of one lane: two samples and the two coefficients of y[i+1] = 2r·cosθ·y[i] − r²·y[i−1]. */
export interface Lane {
  current: number;
  previous: number;
  first: number;
  second: number;
  readonly motion: Float64Array;
}

export function makeLane(): Lane {
  return { current: 0, previous: 0, first: 0, second: 0, motion: new Float64Array(BLOCK) };
}

export function exponentAt(mode: Mode, time: Timeline, edge: number): number {
  return -mode.decayPerSecond * time.seconds[edge]! - time.damping[edge]!;
}

/** Radians of a mode from sample to sample within a block. */
export function stepOf(mode: Mode, time: Timeline, block: number): number {
  return (mode.radiansPerSecond * (time.bentSeconds[block + 1]! - time.bentSeconds[block]!)) / BLOCK;
}

/**
 * Sets a lane to a decaying sine at the start of a block, exactly, so that no error builds up from block to block; a lane
 * without a mode stays at zero. Velocity after a displacement pluck is a sine: every partial starts from zero, no onset clicks.
 */
export function startLane(lane: Lane, voice: Voice | undefined, time: Timeline, block: number): void {
  if (!voice) {
    lane.current = 0;
    lane.previous = 0;
    return;
  }
  const { mode, sine, cosine } = voice;
  const phase = mode.radiansPerSecond * time.bentSeconds[block]!;
  const step = stepOf(mode, time, block);
  const exponent = exponentAt(mode, time, block);
  const ratio = Math.exp((exponentAt(mode, time, block + 1) - exponent) / BLOCK);
  const [sin, cos, scale] = [Math.sin(phase), Math.cos(phase), Math.exp(exponent)];
  const [sinStep, cosStep] = [Math.sin(step), Math.cos(step)];
  const current = sine * sin + cosine * cos;
  const ahead = sine * cos - cosine * sin;
  lane.first = 2 * ratio * cosStep;
  lane.second = ratio * ratio;
  lane.previous = (scale / ratio) * (current * cosStep - ahead * sinStep);
  lane.current = scale * current;
}
