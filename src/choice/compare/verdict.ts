import { showQuantity } from "../../build-file/show-quantity.ts";

/**
 * The just-noticeable change of a tone's level: 1.25 dB near threshold, 0.5 dB at 80 dB above it (Jesteadt, Wier and Green, J.
 * Acoust. Soc. Am. 61, 169, 1977; from memory). Listeners who discriminate resonances follow the largest level difference in any
 * one band (Gagné and Zurek 1988), so the largest band difference is held against it.
 */
const LEVEL_JND_DB = { best: 0.5, usual: 1.25 };
/** Steps above the just noticeable; choices of this project, no source. */
const PLAIN_DB = 3;
const ANOTHER_SOUND_DB = 6;

export const AUDIBILITIES = ["none", "edge", "side-by-side", "plain", "another-sound"] as const;
export type Audibility = (typeof AUDIBILITIES)[number];

export const AUDIBILITY_WORDS: Readonly<Record<Audibility, string>> = {
  none: "nobody hears this",
  edge: "at the edge of hearing, side by side and equally loud",
  "side-by-side": "heard side by side",
  plain: "plainly heard",
  "another-sound": "another sound",
};

/** What the largest difference in any band stays under where two sounds pass for one: by nobody told apart, or hardly. */
export const PASSES_FOR_ONE_DB = { none: LEVEL_JND_DB.best, edge: LEVEL_JND_DB.usual } as const;
export type PassesForOne = keyof typeof PASSES_FOR_ONE_DB;

/** How audible a difference of this many dB in one band is, as `heardDifference` has it. */
export function audibility(largestDb: number): Audibility {
  const size = Math.abs(largestDb);
  if (size < LEVEL_JND_DB.best) return "none";
  if (size < LEVEL_JND_DB.usual) return "edge";
  if (size < PLAIN_DB) return "side-by-side";
  return size < ANOTHER_SOUND_DB ? "plain" : "another-sound";
}

/** 0.02, 3.4, 12 dB: two figures that count, and none that would read as of the next class. */
export function inDecibels(db: number): string {
  const size = Math.abs(db);
  const digits = size < 0.1 ? 2 : size < 9.95 ? 1 : 0;
  const rounded = size.toFixed(digits);
  const isOver = audibility(Number(rounded)) !== audibility(size);
  return `${isOver ? (Math.floor(size * 10) / 10).toFixed(1) : rounded} dB`;
}

/** "+3.6 dB", "−2.7 dB". */
export function signedDecibels(db: number): string {
  return `${db < 0 ? "−" : "+"}${inDecibels(db)}`;
}

export function inHertz(hz: number, figures = 3): string {
  return showQuantity(Math.abs(hz), "frequency", figures);
}

/** Too little to be written as a figure. */
export const isNothing = (db: number) => Math.abs(db) < 0.005;

/** "2.7 dB at 550 Hz", "less than 0.01 dB": a band is a tenth of its frequency wide and more. */
export function figureWords(db: number, hz: number, asFigure: (db: number) => string = inDecibels): string {
  return isNothing(db) ? "less than 0.01 dB" : `${asFigure(db)} at ${inHertz(hz, 2)}`;
}
