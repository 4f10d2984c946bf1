import { listed } from "../../english.ts";
import { positionsOf } from "./found/poles.ts";
import type { SwitchQuestion } from "./question.ts";
import type { NextTouch, Verdict } from "./search/verdict.ts";

const inPositions = (positions: readonly number[]): string =>
  positions.length === 0
    ? "silent in all"
    : `beeps in position${positions.length === 1 ? "" : "s"} ${listed(positions)}`;

/** Why two lugs are to be touched next. */
export function whyOf({ again, outcomes }: NextTouch, isKnown: boolean): string {
  if (again) return "What was heard cannot all be right: touch these two once more.";
  if (!isKnown) return "It is open whether these two are ever joined.";
  const likeliest = outcomes[0]!;
  const percent = Math.min(99, Math.max(1, Math.round(100 * likeliest.share)));
  return `Of all pairs these two tell the most. Most likely: ${inPositions(positionsOf(likeliest.on))} (${percent} %).`;
}

/** How far the finding has come, in a few sentences. */
export function summaryOf(
  question: SwitchQuestion,
  verdict: Verdict,
  isKnown: boolean,
  title: string | undefined,
  untouched: number,
): string {
  const pairs = `${untouched} ${untouched === 1 ? "pair of lugs was" : "pairs of lugs were"} never touched`;
  if (verdict.done && title)
    return `It is a ${title}, or works as one: no other known switch beeps so. ${untouched === 0 ? "Every pair was touched." : `A switch of no known type could still differ: ${pairs}.`}`;
  if (verdict.done)
    return "No known switch beeps so: this is its own contact table, every pair of lugs touched or told by the others.";
  if (!isKnown)
    return `No known switch of ${question.lugs.length} lugs and ${question.positions} positions beeps so. Its own contact table is found pair by pair.`;
  if (verdict.count === 1)
    return "One contact table of a known switch is left if all was heard right. A beep misheard could still have it be another, so go on.";
  if (verdict.count !== undefined) return `${verdict.count} contact tables of known switches are left.`;
  return `Contact tables of known switches are left, a choice of at most ${Math.round(verdict.bits ?? 0)} bits.`;
}
