import type { MeterModel } from "../../meter/meter-model.ts";
import type { Fault } from "../fault.ts";
import type { Evidence } from "../likelihood/evidence.ts";
import type { Prediction } from "../likelihood/predictor.ts";

/** No fault, one, or two: one way in which the guard may be, weighed. */
export interface Hypothesis {
  readonly faults: readonly Fault[];
  readonly logPrior: number;
  readonly model: MeterModel;
  readonly prediction: Prediction;
  readonly evidence: Evidence;
  /** ln P(symptoms | this), 0 where none were told. */
  readonly logSymptoms: number;
  /** Whether it accounts for every reading. */
  readonly explains: boolean;
}

/** Less likely than this, the readings are not what an explanation predicts: one true explanation in a thousand is lost. */
const MIN_FIT = 1e-3;

/** Whether the evidence leaves no reading unexplained. */
export function explainsAll({ missed, fit }: Evidence): boolean {
  return missed.length === 0 && fit >= MIN_FIT;
}

/** ln of the hypothesis's weight beside the others. */
export function score({ logPrior, evidence, logSymptoms }: Hypothesis): number {
  return logPrior + evidence.log + logSymptoms;
}

/** Orders by score, best first. */
export function byScore(a: Hypothesis, b: Hypothesis): number {
  return score(b) - score(a);
}
