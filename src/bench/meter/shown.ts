import { parseQuantity } from "../../build-file/quantity.ts";
import { showQuantity } from "../../build-file/show-quantity.ts";

/** Between what tolerances a reading lies, in ohms; null where open. */
export interface ReadingRange {
  readonly low: number | null;
  readonly high: number | null;
  /** Where only the end of a pot's track is read. */
  readonly potEndUnder?: number | undefined;
}

export function showOhms(ohms: number | null): string {
  return ohms === null ? "open" : showQuantity(ohms, "resistance", 3);
}

/**
 * "5.79 kΩ to 6.13 kΩ", "open", "under 1 Ω", "under 50 Ω; above 2.5 kΩ something is wrong".
 * @param over what the meter at hand shows of what is open: "open (OL)"
 */
export function rangeText({ low, high, potEndUnder }: ReadingRange, over = ""): string {
  if (low === null && high === null) return over === "" ? "open" : `open (${over})`;
  if (potEndUnder !== undefined) return `under ${showOhms(potEndUnder)}; above ${showOhms(high)} something is wrong`;
  if (high !== null && high <= 1) return "under 1 Ω";
  if (low === 0 && high !== null) return `under ${showOhms(high)}`;
  const [from, to] = [showOhms(low), showOhms(high)];
  return from === to ? from : `${from} to ${to}`;
}

/** Of a display that is over its range; how far it is over nobody knows. */
export const OVER = "over";

const OPEN_WORDS = /^(?:open|infinite|∞|inf)$/i;
/** As displays have it: OL and its like, a row of dashes, the half digit alone at the left with or without its point. */
const OVER_WORDS =
  /^(?:[o0]\.? ?l\.?|over(?: ?(?:range|load|limit))?|-[-. ]*-|1(?: *[_-][-_ .]*| +\.| *\. +\.?| {2,}))$/i;

export function isOpenWord(text: string): boolean {
  return OPEN_WORDS.test(text.trim());
}

export function isOverWord(text: string): boolean {
  // What follows a lone 1 is blank on the display, and says that it is no number.
  return OVER_WORDS.test(text.trim()) || OVER_WORDS.test(text.trimStart());
}

/** What a meter showed: ohms (null where open), or that it was over the end of its range, in ohms. */
export type Shown = { readonly ohms: number | null } | { readonly above: number };

/**
 * What a meter showed; undefined for nothing written.
 * @param range the end of the meter's range in ohms; undefined for a meter that chooses its range, whose OL is an open circuit
 * @throws QuantityError
 */
export function readShown(text: string, range?: number): Shown | undefined {
  if (text.trim() === "") return undefined;
  if (isOpenWord(text)) return { ohms: null };
  if (isOverWord(text)) return range === undefined ? { ohms: null } : { above: range };
  return { ohms: parseQuantity(text.trim(), "resistance").value };
}

/** How far a meter may be off. */
export interface Grant {
  readonly share: number;
  readonly ohms: number;
}

/** A meter's own error and what its display wanders, and its leads (common practice, no source). */
const HOBBY_GRANT: Grant = { share: 0.02, ohms: 1 };
/** Where the range is what the very meter may show. */
export const NO_GRANT: Grant = { share: 0, ohms: 0 };

/** Whether what a meter showed lies within a reading's range, the meter's error granted. */
export function fits({ low, high }: ReadingRange, shown: Shown, { share, ohms: leads } = HOBBY_GRANT): boolean {
  if ("above" in shown) return high === null || high * (1 + share) >= shown.above;
  const { ohms } = shown;
  if (ohms === null) return high === null;
  if (low === null) return false;
  return ohms >= low * (1 - share) - leads && (high === null || ohms <= high * (1 + share) + leads);
}
