/** From one place of a list to before another. */
export type Stretch = readonly [from: number, to: number];

/** Chance makes neighbours of unrelated errors less alike than this times 1/√n, 19 times in 20. */
const BY_CHANCE = 2;

/**
 * The share of errors that count as independent. Those of a real sweep go together, because the coil is not quite of the model's form
 * or the instrument drifts: with the correlation ρ of neighbours n of them are worth n·(1 − ρ)/(1 + ρ) (an autoregressive process of
 * order one; textbook). 1 where they are no more alike than chance has it.
 */
export function independentShare(errors: Float64Array, runs: readonly Stretch[]): number {
  let [products, squares, count] = [0, 0, 0];
  for (const [from, to] of runs) {
    for (let i = from; i < to; i++) squares += errors[i]! ** 2;
    for (let i = from + 1; i < to; i++) products += errors[i]! * errors[i - 1]!;
    count += to - from;
  }
  const correlation = squares > 0 ? products / squares : 0;
  return correlation > BY_CHANCE / Math.sqrt(count) ? (1 - correlation) / (1 + correlation) : 1;
}
