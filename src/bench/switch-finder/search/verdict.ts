import type { Touch } from "../heard.ts";
import type { Contacts } from "../known/known-specs.ts";

/** Two lugs to touch, and what may be heard. */
export interface NextTouch {
  readonly a: number;
  readonly b: number;
  readonly outcomes: readonly {
    /** Bit p: it beeps in position p + 1. */
    readonly on: number;
    readonly share: number;
  }[];
  /** Whether it is touched once more, since what was told cannot all be right. */
  readonly again: boolean;
}

export interface LikelyTable {
  /** Between found lugs. */
  readonly contacts: Contacts;
  readonly probability: number;
}

/** What the beeps make of the known switches. */
export interface Verdict {
  /** Touches that were misheard if it is a known one. */
  readonly misheard: number;
  /** Places in the question of the touches that cannot all be right. */
  readonly contradictions: readonly number[];
  /** The likeliest, best first; what the others have is left out of their probabilities. */
  readonly tables: readonly LikelyTable[];
  /** Bits of the choice between the tables left, at most; and how many tables, where they were counted. */
  readonly bits: number | undefined;
  readonly count: number | undefined;
  readonly done: boolean;
  readonly next: NextTouch | undefined;
}

/** Odds beyond which "so many misheard" is given up for "a switch that is not known". Ours. */
const LEAST_ODDS = 1e-3;

/** How many touches may have been misheard of a known switch. */
export function mostMisheard(errors: number): number {
  return errors <= 0 ? 0 : Math.floor(Math.log(LEAST_ODDS) / Math.log(errors));
}

/** How much of the belief goes to how the lugs sit, where some known body has such rows. Ours, no source. */
export const SITTING_SHARE = 0.8;

/** Whether two lugs were touched a single time so far. */
export function toldOnce(touches: readonly Touch[], { a, b }: Touch): boolean {
  const isSame = (touch: Touch) => (touch.a === a && touch.b === b) || (touch.a === b && touch.b === a);
  return touches.filter(isSame).length === 1;
}

/** Where no known switch beeps so, whichever touch was misheard. */
export const FITS_NONE: Verdict = {
  misheard: Number.MAX_SAFE_INTEGER,
  contradictions: [],
  tables: [],
  bits: 0,
  count: 0,
  done: false,
  next: undefined,
};
