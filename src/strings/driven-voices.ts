import { BLOCK, type Timeline } from "./timeline.ts";
import { exponentAt, stepOf, type Voice } from "./voices.ts";

/** Moves a voice through a block while the force acts; what it has taken up at the end is its own from then on. */
export function driveVoice(
  voice: Voice,
  motion: Float64Array,
  force: Float64Array,
  time: Timeline,
  block: number,
): void {
  const { mode } = voice;
  const step = stepOf(mode, time, block);
  pushVoice(voice, motion, force, block * BLOCK, mode.drive * Math.sin(step));
  if (mode.radiansPerSecond > 0) takeUp(voice, step, time, block);
}

/** An impulse of force answers with gain/sinθ·sin(θi), which begins at zero like the pluck's own sine. */
function pushVoice(voice: Voice, motion: Float64Array, force: Float64Array, offset: number, gain: number): void {
  const { first, second } = voice;
  let [value, last] = [voice.current, voice.previous];
  for (let i = 0; i < BLOCK; i += 1) {
    motion[i] = value;
    const next = first * value - second * last + gain * (force[offset + i] ?? 0);
    last = value;
    value = next;
  }
  voice.current = value;
  voice.previous = last;
}

/** The two amplitudes at time zero that would have come to the voice's two last samples. */
function takeUp(voice: Voice, step: number, time: Timeline, block: number): void {
  const { mode } = voice;
  const scale = Math.exp(exponentAt(mode, time, block + 1));
  const current = voice.current / scale;
  const previous = (voice.previous * Math.sqrt(voice.second)) / scale;
  const ahead = (current * Math.cos(step) - previous) / Math.sin(step);
  const phase = mode.radiansPerSecond * time.bentSeconds[block + 1]!;
  voice.sine = current * Math.sin(phase) + ahead * Math.cos(phase);
  voice.cosine = current * Math.cos(phase) - ahead * Math.sin(phase);
}
