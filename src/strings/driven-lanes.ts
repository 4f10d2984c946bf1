import { BLOCK, type Timeline } from "./timeline.ts";
import { exponentAt, type Lane, stepOf, type Voice } from "./voices.ts";

/** The block while the force acts: each voice takes up what its lane has at the end. */
export function driveLanes(
  lanes: readonly Lane[],
  heard: readonly Voice[],
  start: number,
  force: Float64Array,
  time: Timeline,
  block: number,
): void {
  for (let i = 0; i < lanes.length; i += 1) {
    const [lane, voice] = [lanes[i]!, heard[start + i]];
    const step = voice ? stepOf(voice.mode, time, block) : 0;
    driveLane(lane, force, block * BLOCK, (voice?.mode.drive ?? 0) * Math.sin(step));
    if (voice) takeUp(voice, lane, step, time, block);
  }
}

/** An impulse of force answers with gain/sinθ·sin(θi), which begins at zero like the pluck's own sine. */
function driveLane(lane: Lane, force: Float64Array, offset: number, gain: number): void {
  const { first, second, motion } = lane;
  let [value, last] = [lane.current, lane.previous];
  for (let i = 0; i < BLOCK; i += 1) {
    motion[i] = value;
    const next = first * value - second * last + gain * (force[offset + i] ?? 0);
    last = value;
    value = next;
  }
  lane.current = value;
  lane.previous = last;
}

/** The two amplitudes at time zero that would have come to the lane's two last samples. */
function takeUp(voice: Voice, lane: Lane, step: number, time: Timeline, block: number): void {
  const { mode } = voice;
  const scale = Math.exp(exponentAt(mode, time, block + 1));
  const current = lane.current / scale;
  const previous = (lane.previous * Math.sqrt(lane.second)) / scale;
  const ahead = (current * Math.cos(step) - previous) / Math.sin(step);
  const phase = mode.radiansPerSecond * time.bentSeconds[block + 1]!;
  voice.sine = current * Math.sin(phase) + ahead * Math.cos(phase);
  voice.cosine = current * Math.cos(phase) - ahead * Math.sin(phase);
}
