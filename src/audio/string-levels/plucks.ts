import { powerFromDecibels } from "../../decibels.ts";
import { FRAME_SECONDS, type Frames, runningMeans } from "./frames.ts";

const frames = (seconds: number) => Math.round(seconds / FRAME_SECONDS);

/** A pluck raises the treble by this over what rang before; beats and hum stay under it. A choice, held by the tests. */
const RISE = powerFromDecibels(8);
/** Whole periods of 50 Hz, and nearly of 60, so that hum looks even. */
const AFTER = frames(0.02);
const BEFORE = frames(0.04);
/** What rises within it is one pluck: the plectrum's click and the string's release. */
const ONE_PLUCK = frames(0.12);
/** A pluck goes on sounding, a knock or a hand laid on the strings does not. */
const RINGS_FROM = frames(0.1);
const RINGS_TO = frames(0.3);
const RINGS_OVER_BEFORE = powerFromDecibels(6);
/** The softest string counts to so far under the loudest. */
const SOFTEST = powerFromDecibels(-35);
/** Keeps digital silence from being divided by. */
const FLOOR = 1e-14;

/** How much the treble rises at each frame, as a ratio of powers. */
function risesOf({ treble }: Frames): Float64Array {
  const mean = runningMeans(treble);
  const loudest = treble.reduce((most, energy) => Math.max(most, energy), 0);
  // What is far under the loudest is room and converter: no rise of it is a pluck.
  const floor = Math.max(FLOOR, loudest * 1e-7);
  return treble.map((_, frame) =>
    // What is there from the first sample on has not risen.
    frame < BEFORE ? 0 : mean(frame, frame + AFTER) / (mean(frame - BEFORE, frame) + floor),
  );
}

/** Frames of the highest rise within each pluck's time. */
function peaksOf(rises: Float64Array): number[] {
  const peaks: number[] = [];
  for (let frame = 0; frame < rises.length; frame++) {
    if (rises[frame]! < RISE) continue;
    const last = peaks.at(-1);
    if (last === undefined || frame - last > ONE_PLUCK) peaks.push(frame);
    else if (rises[frame]! > rises[last]!) peaks[peaks.length - 1] = frame;
  }
  return peaks;
}

/** Seconds at which strings are plucked: the treble rises there, and what follows goes on sounding. */
export function findPlucks(sound: Frames): number[] {
  const mean = runningMeans(sound.weighted);
  const ringing = (frame: number) => mean(frame + RINGS_FROM, frame + RINGS_TO);
  const peaks = peaksOf(risesOf(sound));
  const loudest = peaks.reduce((most, frame) => Math.max(most, ringing(frame)), 0);
  return peaks
    .filter((frame) => ringing(frame) > loudest * SOFTEST)
    .filter((frame) => ringing(frame) > RINGS_OVER_BEFORE * mean(frame - BEFORE, frame))
    .map((frame) => frame * FRAME_SECONDS);
}
