import { driveLanes } from "./driven-lanes.ts";
import { BLOCK, type Timeline } from "./timeline.ts";
import { exponentAt, type Lane, type Mode, makeLane, startLane, type Voice } from "./voices.ts";

/** A partial ends 100 dB under the note's strongest. */
const DROP_RATIO = 1e-5;
/** Modes moved side by side: one recurrence waits for its own last sample, four fill the wait and share each pass over the mix. */
const LANES = 4;

/** A driven mode's highest sample over what it is driven to in the mean. */
const DRIVE_CREST = 4;

function loudest({ amplitude, drive }: Mode): number {
  return Math.abs(amplitude) + DRIVE_CREST * Math.abs(drive);
}

/**
 * Adds a note to every coil's signal, a block at a time: in each, the modes still heard are mixed in double precision.
 * @param force what drives the modes beside the pluck, from the note's first sample on; may be empty
 * @param checkpoint called between blocks; may throw to end the work
 */
export function addNote(
  outputs: readonly Float32Array[],
  modes: readonly Mode[],
  time: Timeline,
  force: Float64Array,
  checkpoint?: () => void,
): void {
  const floor = DROP_RATIO * modes.reduce((most, mode) => Math.max(most, loudest(mode)), 0);
  const lanes = Array.from({ length: LANES }, makeLane);
  const mixes = outputs.map(() => new Float64Array(BLOCK));
  let heard = modes.map(
    (mode): Voice => ({
      mode,
      sine: mode.amplitude,
      cosine: 0,
      leastExponent: Math.log(floor / loudest(mode)),
    }),
  );
  for (let block = 0; block + 1 < time.seconds.length && heard.length > 0; block += 1) {
    checkpoint?.();
    heard = heard.filter(({ mode, leastExponent }) => exponentAt(mode, time, block) > leastExponent);
    const driven = block * BLOCK < force.length;
    for (let start = 0; start < heard.length; start += LANES) {
      for (let i = 0; i < LANES; i += 1) startLane(lanes[i]!, heard[start + i], time, block);
      if (driven) driveLanes(lanes, heard, start, force, time, block);
      else moveLanes(lanes);
      for (let coil = 0; coil < mixes.length; coil += 1) mixLanes(mixes[coil]!, lanes, heard, start, coil);
    }
    const offset = time.firstSample + block * BLOCK;
    for (let coil = 0; coil < outputs.length; coil += 1) {
      if (time.gain) swell(mixes[coil]!, time.gain[block]!, time.gain[block + 1]!);
      flush(outputs[coil]!, mixes[coil]!, offset);
    }
  }
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
  heard: readonly Voice[],
  start: number,
  coil: number,
): void {
  const { motion: motionA } = lanes[0]!;
  const { motion: motionB } = lanes[1]!;
  const { motion: motionC } = lanes[2]!;
  const { motion: motionD } = lanes[3]!;
  const weightA = heard[start]!.mode.weights[coil]!;
  const weightB = heard[start + 1]?.mode.weights[coil] ?? 0;
  const weightC = heard[start + 2]?.mode.weights[coil] ?? 0;
  const weightD = heard[start + 3]?.mode.weights[coil] ?? 0;
  for (let i = 0; i < BLOCK; i += 1) {
    mix[i] = mix[i]! + weightA * motionA[i]! + weightB * motionB[i]! + weightC * motionC[i]! + weightD * motionD[i]!;
  }
}

/** A gain that goes straight from edge to edge. */
function swell(mix: Float64Array, from: number, to: number): void {
  const step = (to - from) / BLOCK;
  for (let i = 0; i < BLOCK; i += 1) mix[i] = mix[i]! * (from + i * step);
}

function flush(output: Float32Array, mix: Float64Array, offset: number): void {
  const end = Math.min(BLOCK, output.length - offset);
  for (let i = 0; i < end; i += 1) output[offset + i] = output[offset + i]! + mix[i]!;
  mix.fill(0);
}
