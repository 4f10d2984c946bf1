import { heardDifference } from "../../ear/heard-difference.ts";
import type { Change } from "../changes/changes.ts";
import type { HeardRow } from "../comparison-row.ts";
import { inDecibels } from "../verdict.ts";
import type { Axis } from "./axes.ts";

const FULL = 10;
const IS_BLEED = /bleed/i;

/** What the largest of a side's own differences from volume 10 comes to, in dB. */
function strayOf(side: 0 | 1, heard: readonly HeardRow[], axis: Axis): number {
  const keyOf = ({ row }: HeardRow) =>
    JSON.stringify(Object.entries(row.settings[0]).filter(([name]) => !axis.controls.includes(name)));
  const full = new Map(heard.flatMap((row, i) => (axis.values[i] === FULL ? [[keyOf(row), row] as const] : [])));
  return heard.reduce((most, row) => {
    const reference = full.get(keyOf(row));
    if (!reference || row.silent[side] || reference.silent[side]) return most;
    return Math.max(most, Math.abs(heardDifference(reference.sounds[side], row.sounds[side]).largest.db));
  }, 0);
}

/**
 * Of a treble bleed that is gone through by volume: whether it keeps the sound as it is at 10 better than the other does. "" of any
 * other change.
 */
export function keepingWords(changes: readonly Change[], heard: readonly HeardRow[], axis: Axis | undefined): string {
  const isOfBleed =
    changes.length > 0 && changes.every(({ parts }) => parts.length > 0 && parts.every((name) => IS_BLEED.test(name)));
  if (!isOfBleed || axis?.kind !== "dial" || !axis.values.includes(FULL)) return "";
  const [first, second] = [strayOf(0, heard, axis), strayOf(1, heard, axis)];
  const least = Math.min(...axis.values.map(Number));
  const better = second < first ? "more" : "less";
  const verb = changes.length === 1 ? "keeps" : "keep";
  return `${verb} the sound ${better} alike from ${axis.name} ${FULL} down to ${least} (the second strays by up to ${inDecibels(second)}, the first by ${inDecibels(first)}), and `;
}
