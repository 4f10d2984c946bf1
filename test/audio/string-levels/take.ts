import type { Sound } from "../../../src/audio/sound.ts";
import { addRepeated, humPeriod } from "../../../src/listening/noise/hum-signal.ts";
import { roomLines, USUAL_ROOM } from "../../../src/listening/noise/room.ts";
import { REFERENCE_COIL } from "../../../src/strings/comb.ts";
import type { Note } from "../../../src/strings/score.ts";
import { usualStringSet } from "../../../src/strings/string-set.ts";
import { renderPhrase } from "../../../src/strings/synth.ts";

export interface Take {
  readonly sampleRateHz?: number;
  /** In the order in which they are plucked; 1 is the highest. */
  readonly strings?: readonly number[];
  readonly plucks?: number;
  /** Of the hand, 0 to 1, by pluck. */
  readonly velocity?: (index: number) => number;
  readonly everySeconds?: number;
  /** Until it is damped. */
  readonly ringSeconds?: number;
  readonly tailSeconds?: number;
  /** Of white noise, in volts. */
  readonly noise?: number;
  /** Of the room's hum in one coil. */
  readonly hum?: number;
  readonly gain?: number;
}

export const LOW_TO_HIGH = [6, 5, 4, 3, 2, 1];
const LEAD_SECONDS = 0.6;

/** When every string of a take is plucked, in seconds. */
export function pluckTimes({ strings = LOW_TO_HIGH, plucks = 1, everySeconds = 1.6 }: Take): number[] {
  return Array.from({ length: strings.length * plucks }, (_, index) => LEAD_SECONDS + index * everySeconds);
}

function notesOf(take: Take): Note[] {
  const { strings = LOW_TO_HIGH, plucks = 1, velocity = () => 0.8, ringSeconds = 1.4 } = take;
  return pluckTimes(take).map((timeSeconds, index) => ({
    timeSeconds,
    string: strings[Math.floor(index / plucks)]!,
    fret: 0,
    velocity: velocity(index),
    durationSeconds: ringSeconds,
  }));
}

/** Of a coil near mains gear, 2 mV of the fundamental. */
function humOf(length: number, sampleRateHz: number): Float32Array {
  const lines = roomLines(50, USUAL_ROOM).map(({ hz, fluxDensity }) => {
    const volts = (Math.SQRT1_2 * 0.002 * hz * fluxDensity) / (50 * USUAL_ROOM.fluxDensity);
    return { hz, coils: [0, -volts], loops: [0, 0], runs: [0, 0] } as const;
  });
  const samples = new Float32Array(length);
  addRepeated(samples, humPeriod(lines, sampleRateHz), sampleRateHz);
  return samples;
}

/** Open strings plucked one after another into one coil, with the room's noise and hum. */
export function recordTake(take: Take = {}): Sound {
  const { sampleRateHz = 16_000, noise = 1e-5, hum = 1, gain = 1, tailSeconds = 1.5 } = take;
  const notes = notesOf(take);
  const seconds = notes.at(-1)!.timeSeconds + tailSeconds;
  const phrase = { name: "take", description: "open strings", seconds, notes };
  const [samples] = renderPhrase(phrase, [REFERENCE_COIL], usualStringSet(), sampleRateHz);
  const room = humOf(samples!.length, sampleRateHz);
  let state = 12_345;
  const white = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (2 * state) / 2 ** 32 - 1;
  };
  const mixed = samples!.map((value, n) => gain * (value + hum * room[n]! + noise * Math.sqrt(3) * white()));
  return { sampleRateHz, channels: [mixed] };
}
