import type { Hypothesis } from "./hypothesis.ts";

/** A single fault that explains no better than this does so by chance as well as not: one true one in a hundred. */
const DOUBTFUL_FIT = 0.01;
/** A pair of common faults is looked for where it could come this near the best single one, in nats. */
const NEAR = 2;

/** What of the readings and of what was heard an explanation leaves to be desired, in nats. */
export function shortfall({ evidence: { fit }, logSymptoms }: Hypothesis, symptomCount: number): number {
  const told = Math.min(0, logSymptoms + symptomCount * Math.LN2);
  return -Math.log(Math.max(fit, Number.MIN_VALUE)) - told;
}

/**
 * Whether two faults at once are worth a look: where every single explanation leaves a reading unexplained or nearly so, or
 * where the best is so rare a fault, or falls so short, that two common ones are about as likely.
 * @param singles best first
 * @param pairLogPrior ln of the prior probability of two common faults
 */
export function leavesDoubt(singles: readonly Hypothesis[], pairLogPrior: number, symptomCount: number): boolean {
  if (singles.every(({ explains, evidence }) => !explains || evidence.fit < DOUBTFUL_FIT)) return true;
  const best = singles.find(({ explains }) => explains)!;
  const lack = Math.max(0, shortfall(best, symptomCount) - 1);
  return best.faults.length > 0 || symptomCount > 0 ? best.logPrior - lack < pairLogPrior + NEAR : false;
}
