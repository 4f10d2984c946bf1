import { OUTSIDE_SHARE, SECOND_FAULT_SHARE } from "../priors/fault-shares.ts";
import { shortfall } from "./doubt.ts";
import { explains, type Group, isSameReading } from "./groups.ts";
import type { Hypothesis } from "./hypothesis.ts";

/** What the explanations leave over, as probabilities of the whole. */
export interface Remainder {
  /** That a second fault is there beside the first one, which nothing told can show. */
  readonly hidden: number;
  /** That it is something that no explanation names. */
  readonly outside: number;
}

/**
 * How many times likelier a fit is under the best of other explanations than under the one given, at most: −1 / (e · p · ln p)
 * for p below 1/e (T. Sellke, M. J. Bayarri, J. O. Berger, Calibration of p values, The American Statistician 55, 2001).
 */
export function oddsAgainst(fit: number): number {
  return fit >= 1 / Math.E ? 1 : -1 / (Math.E * fit * Math.log(fit));
}

/** Faults, by their share of all, that neither readings nor what was heard would show; what is felt while playing is told. */
function hiddenShare(singles: readonly Hypothesis[]): number {
  const sound = singles.find(({ faults }) => faults.length === 0);
  const real = singles.filter(({ faults }) => faults.length === 1 && faults[0]!.edits.length > 0);
  const all = real.reduce((sum, { logPrior }) => sum + Math.exp(logPrior), 0);
  const hidden = real.reduce(
    (sum, each) => sum + (sound && isSameReading(each, sound) ? Math.exp(each.logPrior) : 0),
    0,
  );
  return all > 0 ? hidden / all : 0;
}

/** What is left beside the groups: a second fault that does not show, and what is not in the pool at all. */
export function remainderOf(groups: readonly Group[], singles: readonly Hypothesis[], symptomCount: number): Remainder {
  const [best] = groups;
  if (!best || !explains(best)) return { hidden: 0, outside: 1 };
  const least = Math.min(...best.members.map((each) => shortfall(each, symptomCount)));
  const oddsOutside = (OUTSIDE_SHARE / (1 - OUTSIDE_SHARE)) * oddsAgainst(Math.exp(-least));
  const outside = oddsOutside / (1 + oddsOutside);
  const second = ((2 * SECOND_FAULT_SHARE) / (1 - SECOND_FAULT_SHARE)) * hiddenShare(singles);
  const isOneFault = best.members[0]!.faults.length === 1;
  return { outside, hidden: isOneFault ? (1 - outside) * (second / (1 + second)) : 0 };
}
