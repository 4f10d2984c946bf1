import { CHOKE_BEFORE_SECONDS, CHOKE_PER_SECOND, RELEASE_PER_SECOND } from "./decay.ts";
import { bentTime } from "./pitch-curve.ts";
import type { Note, Phrase } from "./score.ts";

/** The grain of bends, damping and swells, and the stretch between exact restarts of the modes: under 3 ms at 44.1 kHz. */
export const BLOCK = 128;

/** Time as a note's modes see it at the edge of each block. */
export interface Timeline {
  readonly firstSample: number;
  readonly seconds: Float64Array;
  /** ∫ pitch ratio dt: equals `seconds` without a bend. */
  readonly bentSeconds: Float64Array;
  /** Exponent of the damping all modes share: finger, next pluck. */
  readonly damping: Float64Array;
  /** 1 for a block in which pitch or damping run otherwise than in the one before. */
  readonly turns: Uint8Array;
  /** Factor on what the coils give; none for a note without a swell. */
  readonly gain: Float64Array | undefined;
}

export function nextPluckSeconds(phrase: Phrase, note: Note): number {
  let next = Number.POSITIVE_INFINITY;
  for (const other of phrase.notes) {
    if (other.string === note.string && other.timeSeconds > note.timeSeconds) next = Math.min(next, other.timeSeconds);
  }
  return next;
}

/** @param length samples of the phrase */
export function timelineOf(note: Note, nextPluck: number, length: number, sampleRateHz: number): Timeline {
  const firstSample = Math.ceil(note.timeSeconds * sampleRateHz);
  const edges = Math.max(0, Math.ceil((length - firstSample) / BLOCK)) + 1;
  const choke = nextPluck - CHOKE_BEFORE_SECONDS - note.timeSeconds;
  const seconds = Float64Array.from(
    { length: edges },
    (_, edge) => (firstSample + edge * BLOCK) / sampleRateHz - note.timeSeconds,
  );
  const { pitch, swellSeconds } = note;
  const bentSeconds = pitch && pitch.length > 0 ? seconds.map(bentTime(pitch)) : seconds;
  const damping = seconds.map(
    (now) => RELEASE_PER_SECOND * Math.max(0, now - note.durationSeconds) + CHOKE_PER_SECOND * Math.max(0, now - choke),
  );
  return {
    firstSample,
    seconds,
    bentSeconds,
    damping,
    turns: Uint8Array.from(seconds, (_, edge) => Number(isTurn(bentSeconds, edge) || isTurn(damping, edge))),
    gain: swellSeconds === undefined ? undefined : seconds.map((now) => swellAt(now / swellSeconds)),
  };
}

/** Beyond rounding: over the blocks that a mode goes on its own it comes to less than a 24-bit sample's last place. */
const STRAIGHT = 1e-12;

function isTurn(values: Float64Array, edge: number): boolean {
  if (edge === 0 || edge + 1 >= values.length) return false;
  const [before, now, after] = [values[edge - 1]!, values[edge]!, values[edge + 1]!];
  return Math.abs(after - 2 * now + before) > STRAIGHT;
}

/** From 0 to 1 in a raised cosine: the knob starts and stops softly. */
function swellAt(share: number): number {
  return (1 - Math.cos(Math.PI * Math.min(1, share))) / 2;
}
