import type { FitJob } from "../../../choice/fit/fit-job.ts";
import type { Fit } from "../../../choice/fit/fit-problem.ts";
import type { FittedAnswer } from "../../../contract/fit.ts";

function residualsOf(job: FitJob, errors: Float64Array): FittedAnswer["residuals"] {
  if (job.method === "resonances")
    return job.readings.map(({ frequencyHz }, i) => ({ of: "frequency", frequency: frequencyHz, error: errors[i]! }));
  if (job.method === "two-loads") {
    let from = 0;
    return job.sweeps.flatMap(({ frequenciesHz }) => {
      const own = errors.subarray(from, from + 2 * frequenciesHz.length);
      from += own.length;
      return tableResiduals(frequenciesHz, own);
    });
  }
  return tableResiduals(job.table.frequenciesHz, errors);
}

/** Sizes first, then angles where there are any. */
function tableResiduals(frequenciesHz: readonly number[], errors: Float64Array): FittedAnswer["residuals"] {
  return Array.from(errors, (error, i) => ({
    of: i < frequenciesHz.length ? "magnitude" : "phase",
    frequency: frequenciesHz[i % frequenciesHz.length]!,
    error,
  }));
}

export function fittedAnswerOf(
  job: FitJob,
  { coil, loss, errors, covariance: _covariance, ...fit }: Fit,
): FittedAnswer {
  return { method: job.method, coil, lossModel: loss, ...fit, residuals: residualsOf(job, errors) };
}
