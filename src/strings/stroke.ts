import type { Pluck } from "./comb.ts";
import { DEFAULT_HAND, HANDS, type Hand } from "./hands.ts";
import type { Note } from "./score.ts";
import type { SoundingString } from "./string-set.ts";

/** From the bridge, in metres: between the usual middle and neck coils; common practice, no source. */
const USUAL_PLACE_METRES = 0.13;
/** High on the neck the hand moves towards the bridge; short of the middle, where every even partial would vanish. */
const HIGH_PLUCK_FRACTION = 0.4;
/** A plain string has no windings for the edge to run over; from memory, no source. */
const SCRAPE_OF_A_PLAIN_STRING = 0.5;

/** How a string is set going. */
export interface Stroke extends Pluck {
  /** Between the pull and the line from string to pickup; at 90 the string is pulled along the guard's plane. */
  readonly slantDegrees: number;
  /** Impulse of the plectrum's scrape over the force that it plucks with; 0 is a fingertip. */
  readonly scrapeSeconds: number;
}

/** A note's stroke: the hand's, but for what the note has of its own. The place may be off the string. */
export function strokeOf(note: Partial<Note>, string: SoundingString): Stroke {
  const hand: Hand = HANDS[note.hand ?? DEFAULT_HAND];
  const wanted = hand.placeFactor * (note.pluckMetres ?? USUAL_PLACE_METRES);
  const reach = HIGH_PLUCK_FRACTION * string.lengthMetres;
  return {
    // Where a note says its place and the hand is the usual one, it is that place or a refusal.
    placeMetres: note.pluckMetres !== undefined && hand.placeFactor === 1 ? wanted : Math.min(wanted, reach),
    widthMetres: note.pluckWidthMetres ?? hand.widthMetres,
    releaseSeconds: hand.releaseSeconds,
    slantDegrees: note.slantDegrees ?? hand.slantDegrees,
    scrapeSeconds: (note.scrape ?? 1) * hand.scrapeSeconds * (string.wound ? 1 : SCRAPE_OF_A_PLAIN_STRING),
  };
}
