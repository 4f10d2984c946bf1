import { PresolderError } from "../../errors.ts";
import type { CoilValues } from "../../response/coil-ladder.ts";
import { aiccOf, chosenOf, DECISIVE_AICC } from "./choose-model.ts";
import type { LossModel } from "./coil-shapes.ts";
import { type Attempt, attempt, exponentials, type FitProblem, relativeErrors } from "./fit-attempt.ts";
import { type FittedValue, inOrder, interval, lowFrequencyInductance } from "./fitted-value.ts";
import { complaint } from "./untold.ts";

export interface ConsideredModel {
  readonly loss: LossModel;
  /** Akaike's information criterion, corrected for small samples; the least is best. Null where the model could not be fitted. */
  readonly aicc: number | null;
  readonly usable: boolean;
  readonly reason: string;
}

export interface Fit {
  readonly loss: LossModel;
  readonly coil: CoilValues;
  readonly values: readonly FittedValue[];
  /** Inductance at low frequency: the coil's own and its sections' together. */
  readonly lowFrequencyInductance: FittedValue;
  /** Measured minus fitted. */
  readonly errors: Float64Array;
  readonly precision: { readonly value: number; readonly estimated: boolean };
  readonly degreesOfFreedom: number;
  readonly condition: number;
  /** Of the values' logarithms, in their order. */
  readonly covariance: readonly (readonly number[])[];
  readonly considered: readonly ConsideredModel[];
  readonly notes: readonly string[];
}

/** χ² a degree of freedom above which a stated precision is not what the measurements have. */
const STRAINED = 4;

function notesOn(problem: FitProblem, chosen: Attempt, considered: readonly ConsideredModel[]): string[] {
  const notes: string[] = [];
  const better = considered.filter(
    ({ usable, aicc }) => !usable && aicc !== null && aicc < aiccOf(chosen) - DECISIVE_AICC,
  );
  if (better.length > 0)
    notes.push(
      `A finer loss model (${better.map(({ loss }) => loss).join(", ")}) follows the measurements better, but they do not fix its` +
        " values; the values given carry the difference, so their errors are too small.",
    );
  const { degreesOfFreedom, share, solution } = chosen;
  const count = chosen.errors.length;
  if (share < 1)
    notes.push(
      `Neighbouring residuals are alike, so that of ${count} only some ${Math.round(share * count)} count as independent; the` +
        " ranges are widened for it.",
    );
  if (problem.precision !== undefined && degreesOfFreedom > 0 && solution.chiSquare > STRAINED * degreesOfFreedom)
    notes.push(
      "The residuals are larger than the stated precision allows: the coil is not of this form, or a reading is off.",
    );
  return notes;
}

function finish(problem: FitProblem, chosen: Attempt, considered: ConsideredModel[]): Fit {
  const { shape, solution, degreesOfFreedom } = chosen;
  const found = exponentials(solution.parameters);
  const order = inOrder(found);
  const values = order.map((at) => found[at]!);
  const errors = relativeErrors(chosen);
  const freedom = problem.precision === undefined ? degreesOfFreedom : Number.POSITIVE_INFINITY;
  return {
    loss: shape.loss,
    coil: shape.coilOf(values),
    values: shape.names.map((name, i) => interval(name, values[i]!, errors[order[i]!]!, freedom)),
    lowFrequencyInductance: lowFrequencyInductance(chosen, freedom),
    errors: chosen.errors,
    precision: { value: chosen.sigma, estimated: problem.precision === undefined },
    degreesOfFreedom,
    condition: solution.condition,
    covariance: order.map((a) => order.map((b) => solution.covariance![a * order.length + b]!)),
    considered,
    notes: notesOn(problem, chosen, considered),
  };
}

/**
 * What the model that follows the measurements closest leaves of them, told or not.
 */
export function leastErrors(problem: FitProblem): Float64Array | undefined {
  const attempts = problem.models.flatMap((loss) => attempt(problem, loss) ?? []);
  return attempts.length === 0
    ? undefined
    : attempts.reduce((best, made) => (aiccOf(made) < aiccOf(best) ? made : best)).errors;
}

/**
 * Fits a coil to measurements by weighted least squares over the logarithms of its values, for every loss model asked for, and
 * keeps the one that is chosen among those whose values the data can tell.
 * @throws PresolderError DATA_INSUFFICIENT where the data can tell none
 */
export function fitCoil(problem: FitProblem): Fit {
  const attempts = problem.models.map((loss) => ({ loss, attempt: attempt(problem, loss) }));
  const considered = attempts.map(({ loss, attempt: made }): ConsideredModel => {
    if (!made) return { loss, aicc: null, usable: false, reason: "there are more values than measurements" };
    const reason = complaint(made, problem.isLossUsual);
    return { loss, aicc: aiccOf(made), usable: reason === undefined, reason: reason ?? "its values are told" };
  });
  const usable = attempts.flatMap(({ attempt: made }, i) => (made && considered[i]!.usable ? [made] : []));
  if (usable.length === 0) {
    const reasons = considered.map(({ loss, reason }) => `${loss}: ${reason}`).join("; ");
    const detail = `The measurements cannot tell the coil's values: ${reasons}. ${problem.remedy}`;
    throw new PresolderError("DATA_INSUFFICIENT", detail);
  }
  return finish(problem, chosenOf(usable), considered);
}
