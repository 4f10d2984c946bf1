/**
 * The probability of at least `right` of `trials` by guessing among so many candidates: the upper tail of the binomial distribution with
 * p = 1/candidates, exact up to the last division, since it is counted in whole numbers.
 */
export function guessingProbability(right: number, trials: number, candidates = 2): number {
  const wrongWays = BigInt(candidates - 1);
  let ways = 0n;
  let choose = 1n;
  for (let k = 0; k <= trials; k++) {
    if (k >= right) ways += choose * wrongWays ** BigInt(trials - k);
    choose = (choose * BigInt(trials - k)) / BigInt(k + 1);
  }
  return Number(ways) / Number(BigInt(candidates) ** BigInt(trials));
}

/** The usual bound below which a result is not put down to luck. */
export const TOLD_APART_BELOW = 0.05;

/** What the result means, in a plain sentence. */
export function verdictText(right: number, trials: number): string {
  if (guessingProbability(right, trials) < TOLD_APART_BELOW) return "You can tell them apart.";
  return "You could not tell them apart: buy the cheaper one.";
}

/** "5.4 %", "0.02 %". What is not certain is not called so. */
export function percentText(probability: number): string {
  const percent = probability * 100;
  if (percent > 99 && percent < 100) return "more than 99 %";
  return `${percent >= 10 ? percent.toFixed(0) : percent >= 0.1 ? percent.toFixed(1) : percent.toPrecision(1)} %`;
}
