/** Between exact restarts of the recurrence; also the grain of bends and damping, under 3 ms at 44.1 kHz. */
export const BLOCK = 128;
/** A partial ends 100 dB under the note's strongest. */
const DROP_RATIO = 1e-5;
/** Modes moved side by side: one recurrence waits for its own last sample, four fill the wait and share each pass over the mix. */
const LANES = 4;

/** One partial of one note: its motion is the string's, only the weights are the coils'. */
export interface Mode {
  readonly radiansPerSecond: number;
  readonly decayPerSecond: number;
  readonly amplitude: number;
  /** Volts per unit motion, one for each coil. */
  readonly weights: Float64Array;
}

/** Time as a note's modes see it at the edge of each block. */
export interface Timeline {
  readonly firstSample: number;
  readonly seconds: Float64Array;
  /** ∫ pitch ratio dt: equals `seconds` without a bend. */
  readonly bentSeconds: Float64Array;
  /** Exponent of the damping all modes share: finger, next pluck. */
  readonly damping: Float64Array;
}

/** The state of one lane: two samples and the two coefficients of y[i+1] = 2r·cosθ·y[i] − r²·y[i−1]. */
interface Lane {
  current: number;
  previous: number;
  first: number;
  second: number;
  readonly motion: Float64Array;
}

/**
 * Adds a note to every coil's signal, a block at a time: in each, the modes still heard are mixed in double precision.
 * `checkpoint` is called between blocks and may throw to end the work.
 */
export function addNote(
  outputs: readonly Float32Array[],
  modes: readonly Mode[],
  time: Timeline,
  checkpoint?: () => void,
): void {
  const floor = DROP_RATIO * modes.reduce((most, mode) => Math.max(most, Math.abs(mode.amplitude)), 0);
  const lanes = Array.from({ length: LANES }, makeLane);
  const mixes = outputs.map(() => new Float64Array(BLOCK));
  let heard = modes;
  for (let block = 0; block + 1 < time.seconds.length && heard.length > 0; block += 1) {
    checkpoint?.();
    heard = heard.filter((mode) => Math.abs(mode.amplitude) * Math.exp(exponentAt(mode, time, block)) > floor);
    for (let start = 0; start < heard.length; start += LANES) {
      for (let i = 0; i < LANES; i += 1) startLane(lanes[i]!, heard[start + i], time, block);
      moveLanes(lanes);
      for (let coil = 0; coil < mixes.length; coil += 1) mixLanes(mixes[coil]!, lanes, heard, start, coil);
    }
    const offset = time.firstSample + block * BLOCK;
    for (let coil = 0; coil < outputs.length; coil += 1) flush(outputs[coil]!, mixes[coil]!, offset);
  }
}

function makeLane(): Lane {
  return { current: 0, previous: 0, first: 0, second: 0, motion: new Float64Array(BLOCK) };
}

function exponentAt(mode: Mode, time: Timeline, edge: number): number {
  return -mode.decayPerSecond * time.seconds[edge]! - time.damping[edge]!;
}

/**
 * Sets a lane to a decaying sine at the start of a block, exactly, so that no error builds up from block to block; a lane
 * without a mode stays at zero. Velocity after a displacement pluck is a sine: every partial starts from zero, no onset clicks.
 */
function startLane(lane: Lane, mode: Mode | undefined, time: Timeline, block: number): void {
  if (!mode) {
    lane.current = 0;
    lane.previous = 0;
    return;
  }
  const phase = mode.radiansPerSecond * time.bentSeconds[block]!;
  const step = (mode.radiansPerSecond * time.bentSeconds[block + 1]! - phase) / BLOCK;
  const exponent = exponentAt(mode, time, block);
  const ratio = Math.exp((exponentAt(mode, time, block + 1) - exponent) / BLOCK);
  const amplitude = mode.amplitude * Math.exp(exponent);
  lane.first = 2 * ratio * Math.cos(step);
  lane.second = ratio * ratio;
  lane.previous = (amplitude / ratio) * Math.sin(phase - step);
  lane.current = amplitude * Math.sin(phase);
}

/** Unrolled over the lanes with every state in a local: half the time of a loop over them. */
function moveLanes(lanes: readonly Lane[]): void {
  const [laneA, laneB, laneC, laneD] = [lanes[0]!, lanes[1]!, lanes[2]!, lanes[3]!];
  const { first: firstA, second: secondA, motion: motionA } = laneA;
  const { first: firstB, second: secondB, motion: motionB } = laneB;
  const { first: firstC, second: secondC, motion: motionC } = laneC;
  const { first: firstD, second: secondD, motion: motionD } = laneD;
  let [a, b, c, d] = [laneA.current, laneB.current, laneC.current, laneD.current];
  let [lastA, lastB, lastC, lastD] = [laneA.previous, laneB.previous, laneC.previous, laneD.previous];
  for (let i = 0; i < BLOCK; i += 1) {
    motionA[i] = a;
    motionB[i] = b;
    motionC[i] = c;
    motionD[i] = d;
    const nextA = firstA * a - secondA * lastA;
    const nextB = firstB * b - secondB * lastB;
    const nextC = firstC * c - secondC * lastC;
    const nextD = firstD * d - secondD * lastD;
    lastA = a;
    lastB = b;
    lastC = c;
    lastD = d;
    a = nextA;
    b = nextB;
    c = nextC;
    d = nextD;
  }
}

function mixLanes(
  mix: Float64Array,
  lanes: readonly Lane[],
  heard: readonly Mode[],
  start: number,
  coil: number,
): void {
  const { motion: motionA } = lanes[0]!;
  const { motion: motionB } = lanes[1]!;
  const { motion: motionC } = lanes[2]!;
  const { motion: motionD } = lanes[3]!;
  const weightA = heard[start]!.weights[coil]!;
  const weightB = heard[start + 1]?.weights[coil] ?? 0;
  const weightC = heard[start + 2]?.weights[coil] ?? 0;
  const weightD = heard[start + 3]?.weights[coil] ?? 0;
  for (let i = 0; i < BLOCK; i += 1) {
    mix[i] = mix[i]! + weightA * motionA[i]! + weightB * motionB[i]! + weightC * motionC[i]! + weightD * motionD[i]!;
  }
}

function flush(output: Float32Array, mix: Float64Array, offset: number): void {
  const end = Math.min(BLOCK, output.length - offset);
  for (let i = 0; i < end; i += 1) output[offset + i] = output[offset + i]! + mix[i]!;
  mix.fill(0);
}
