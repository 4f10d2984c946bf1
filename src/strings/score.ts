import type { HandName } from "./hands.ts";
import type { PitchCurve } from "./pitch-curve.ts";

/** Silence before the first note, so that a player has started before the sound does. */
export const LEAD_IN_SECONDS = 0.05;

/** A score as data: what a hand does to which string, when. */
export interface Note {
  readonly timeSeconds: number;
  /** 1 is the highest string. */
  readonly string: number;
  readonly fret: number;
  /** 0 to 1. */
  readonly velocity: number;
  /** Until the string is damped; it rings on under the next note on another string. */
  readonly durationSeconds: number;
  /** "usual" where left out; what follows is the note's own beside it. */
  readonly hand?: HandName;
  /** From the bridge, by the usual hand. */
  readonly pluckMetres?: number;
  /** Of plectrum or finger on the string: a broad thumb takes the edge off. */
  readonly pluckWidthMetres?: number;
  /** Between the pull and the line to the pickup. */
  readonly slantDegrees?: number;
  /** On the hand's scrape; 0 is none. */
  readonly scrape?: number;
  /** The palm rests on the string at the bridge. */
  readonly muted?: boolean;
  /** A finger touches the string at one such part of its length, for a harmonic: 2, 3, 4. */
  readonly harmonic?: number;
  readonly pitch?: PitchCurve;
  /** The volume knob is turned up from nothing in this time, from the pluck on. */
  readonly swellSeconds?: number;
}

export interface Phrase {
  readonly name: string;
  readonly description: string;
  readonly seconds: number;
  readonly notes: readonly Note[];
}

/** The phrase by one hand throughout. */
export function playedBy(phrase: Phrase, hand: HandName): Phrase {
  return { ...phrase, notes: phrase.notes.map((note) => ({ ...note, hand })) };
}

export interface Strum {
  readonly timeSeconds: number;
  /** Frets from the highest string down, null for a string left out. */
  readonly frets: readonly (number | null)[];
  readonly velocity: number;
  readonly ringSeconds: number;
  readonly direction: "down" | "up";
  /** Time from string to string. */
  readonly spreadSeconds: number;
}

/** A strum as notes; a down stroke meets the lowest string first. The stroke slows the plectrum a little on its way. */
export function strummed(strum: Strum): Note[] {
  const strings = strum.frets.flatMap((fret, index) => (fret === null ? [] : [{ fret, string: index + 1 }]));
  if (strum.direction === "down") strings.reverse();
  return strings.map(({ fret, string }, order) => ({
    timeSeconds: strum.timeSeconds + order * strum.spreadSeconds,
    string,
    fret,
    velocity: strum.velocity * (1 - 0.04 * order),
    durationSeconds: strum.ringSeconds - order * strum.spreadSeconds,
  }));
}

/** Beats to notes: `steps` are `[beat, string, fret, lengthBeats, velocity]`, from `startSeconds` on. */
export function stepped(
  startSeconds: number,
  beatSeconds: number,
  steps: readonly (readonly [number, number, number, number, number])[],
): Note[] {
  return steps.map(([beat, string, fret, lengthBeats, velocity]) => ({
    timeSeconds: startSeconds + beat * beatSeconds,
    string,
    fret,
    velocity,
    durationSeconds: lengthBeats * beatSeconds,
  }));
}
