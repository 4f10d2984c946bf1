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

/** "5.79 kΩ to 6.13 kΩ", "open", "under 1 Ω", "under 50 Ω; above 2.5 kΩ it leaks". */
export function rangeText({ low, high, potEndUnder }: ReadingRange): string {
  if (low === null && high === null) return "open";
  if (potEndUnder !== undefined) return `under ${showOhms(potEndUnder)}; above ${showOhms(high)} it leaks`;
  if (high !== null && high <= 1) return "under 1 Ω";
  const [from, to] = [showOhms(low), showOhms(high)];
  return from === to ? from : `${from} to ${to}`;
}

const OPEN_WORDS = ["open", "∞", "infinite"];
const OVER_WORDS = ["ol", "o.l", "o.l.", "0l", "over", "over range", "overload"];

/** What a meter showed: ohms (null where open), or that it was over the end of its range, in ohms. */
export type Shown = { readonly ohms: number | null } | { readonly above: number };

/**
 * What a meter showed; undefined for nothing written.
 * @param range the end of the meter's range in ohms; undefined for a meter that chooses its range, whose OL is an open circuit
 * @throws QuantityError
 */
export function readShown(text: string, range?: number): Shown | undefined {
  const written = text.trim();
  if (written === "") return undefined;
  const word = written.toLowerCase();
  if (OPEN_WORDS.includes(word)) return { ohms: null };
  if (OVER_WORDS.includes(word)) return range === undefined ? { ohms: null } : { above: range };
  return { ohms: parseQuantity(written, "resistance").value };
}

/** A meter's own error and what its display wanders (common practice, no source). */
const METER_SHARE = 0.02;

/** Whether what a meter showed lies within a reading's range, the meter's error granted. */
export function fits({ low, high }: ReadingRange, shown: Shown): boolean {
  if ("above" in shown) return high === null || high * (1 + METER_SHARE) >= shown.above;
  const { ohms } = shown;
  if (ohms === null) return high === null;
  if (low === null) return false;
  return ohms >= low * (1 - METER_SHARE) - 1 && (high === null || ohms <= high * (1 + METER_SHARE) + 1);
}
