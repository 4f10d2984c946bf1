import { isJoint, isOpen } from "../../meter/hobby-meter.ts";
import type { Judgement } from "../judge.ts";
import type { NextCheck } from "../next/next-check.ts";
import type { Explanation } from "./explanations.ts";
import { ohmsText } from "./reading-words.ts";

/** As likely as this, an explanation is called the likeliest outright. */
const LIKELY = 0.5;
/** A reading is no reason where sound parts come this near it, in ln R. */
const NO_REASON = 0.05;

/** The first statement of a message, to stand inside a sentence: "the connection from a to b is open". */
export function clause(message: string): string {
  const first = /^(.*?)(?::|\.)(?=\s|$)/.exec(message)?.[1] ?? message;
  return first.charAt(0).toLowerCase() + first.slice(1);
}

export function percent(probability: number): string {
  return `${Math.max(1, Math.min(99, Math.round(100 * probability)))} %`;
}

function apart(a: number, b: number): number {
  if ((isOpen(a) && isOpen(b)) || (isJoint(a) && isJoint(b))) return 0;
  if (isOpen(a) || isOpen(b)) return Number.POSITIVE_INFINITY;
  return Math.abs(Math.log((a + 1) / (b + 1)));
}

/** The reading that a sound guard is furthest from, in words. */
function reason({ plans, observations, sound }: Judgement): string {
  let [most, index] = [NO_REASON, -1];
  for (const [at, { ohms, above }] of observations.entries()) {
    const [right, upTo] = [sound.prediction.ohms[at]!, sound.prediction.upTo[at]!];
    if (ohms >= right && ohms <= upTo) continue;
    const far = above !== undefined && right >= above ? 0 : apart(above ?? ohms, right);
    if (far > most) [most, index] = [far, at];
  }
  if (index < 0) return "";
  const right = ohmsText({ ohms: sound.prediction.ohms[index]! });
  return `: ${plans[index]!.label} shows ${ohmsText(observations[index]!)} where a sound guard shows ${right}`;
}

function verdict(judgement: Judgement, { faults, probability, message, sameAs }: Explanation): string {
  const { kind } = faults[0]!;
  if (kind === "nothing-measured") return "Nothing is measured yet, so nothing can be said.";
  if (kind === "unexplained")
    return "Nothing that was weighed accounts for all of this: two things or more are wrong, or a reading is.";
  if (kind === "none")
    return probability >= LIKELY
      ? `Nothing that is wrong shows in this (${percent(probability)}).`
      : `Nothing that is wrong shows for sure in this: it is sound with ${percent(probability)}.`;
  const what = faults.length > 1 ? message.split(" And: ").map(clause).join(", and ") : clause(message);
  const others = sameAs.length > 0 ? ", or something that reads the same" : "";
  const how = probability >= LIKELY ? "Most likely" : "Perhaps";
  return `${how} (${percent(probability)}) ${what}${others}${reason(judgement)}.`;
}

/**
 * The answer as a colleague would give it: what it most likely is and why, then what to do next. Lugs stand by their codes.
 */
export function summaryOf(judgement: Judgement, best: Explanation, next: NextCheck | null): string {
  const told = verdict(judgement, best);
  return next === null ? told : `${told} ${next.instruction}`;
}
