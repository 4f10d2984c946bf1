import { showDb, showHz } from "../curves/units.ts";
import type { LargestDifference } from "../engine/curve-difference.ts";

/** A verdict of the service, which knows a first and a second guard, in the names that the page has for them. */
export function named(verdict: string, first: string, second: string): string {
  return verdict.replaceAll(/\bthe (first|second)\b/g, (_, which) => (which === "first" ? first : second));
}

export function differenceText({ hertz, decibels, silent }: LargestDifference): string {
  if (silent) return `${silent} is silent and ${silent === "A" ? "B" : "A"} is not`;
  if (Math.abs(decibels) < 0.05) return "no difference of 0.05 dB or more between 80 Hz and 8 kHz";
  const word = decibels > 0 ? "louder" : "quieter";
  return `A is ${showDb(Math.abs(decibels)).replace("+", "")} ${word} than B at ${showHz(hertz)}, both set level at 200 Hz`;
}
