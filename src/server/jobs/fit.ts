import { type FitJob, runFit } from "../../choice/fit/fit-job.ts";
import type { Fit } from "../../choice/fit/fit-problem.ts";
import { readMeasurements } from "../../choice/fit/measurement-csv.ts";
import type { AcrossBody, FitBody, FittedAnswer } from "../../contract/fit.ts";
import { refused } from "../../errors.ts";
import type { Job, JobContext } from "../work/job.ts";

type MeasuredBody = Exclude<FitBody, { method: "resistance" }>;
type BodyOf<Method extends FitBody["method"]> = Extract<FitBody, { method: Method }>;

interface Columns {
  readonly frequenciesHz: readonly number[];
  readonly values: readonly number[];
  readonly thirds?: readonly number[] | undefined;
}

function checkColumns({ frequenciesHz, values, thirds }: Columns, valuesMustBePositive: boolean): void {
  const faults = [];
  if (values.length !== frequenciesHz.length || (thirds && thirds.length !== frequenciesHz.length))
    faults.push({ path: "table", message: "its lists have different lengths; expected one value a frequency" });
  const bad = frequenciesHz.findIndex((value) => !(value > 0));
  if (bad >= 0)
    faults.push({ path: `table.frequencies.${bad}`, message: `is ${frequenciesHz[bad]}; expected more than 0 Hz` });
  const low = valuesMustBePositive ? values.findIndex((value) => !(value > 0)) : -1;
  if (low >= 0) faults.push({ path: `table.ohms.${low}`, message: `is ${values[low]}; expected more than 0 Ω` });
  if (faults.length > 0) throw refused("REQUEST_INVALID", faults);
}

function across(given: AcrossBody | undefined) {
  return { resistance: given?.resistance ?? Number.POSITIVE_INFINITY, capacitance: given?.capacitance ?? 0 };
}

function resonancesJob(body: BodyOf<"resonances">): FitJob {
  const { resistance, resistancePrecision, peakOf, precision } = body;
  const readings = body.readings.map(({ capacitance, frequency }) => ({
    capacitanceFarads: capacitance,
    frequencyHz: frequency,
  }));
  const known = { ohms: resistance, precision: resistancePrecision };
  return {
    method: "resonances",
    readings,
    setup: { resistance: known, peakOf, across: across(body.across), precision },
  };
}

function knownOf({ resistance, resistancePrecision, precision, loss }: BodyOf<"impedance" | "response">) {
  return {
    resistance: resistance === undefined ? undefined : { ohms: resistance, precision: resistancePrecision },
    precision,
    models: loss && [loss],
  };
}

function impedanceJob(body: BodyOf<"impedance">): FitJob {
  const { table } = body;
  const columns: Columns =
    typeof table === "string"
      ? readMeasurements(table, "table")
      : { frequenciesHz: table.frequencies, values: table.ohms, thirds: table.degrees };
  checkColumns(columns, true);
  const { frequenciesHz, values, thirds } = columns;
  const known = { ...knownOf(body), across: across(body.across) };
  return { method: "impedance", table: { frequenciesHz, ohms: values, degrees: thirds }, known };
}

function responseJob(body: BodyOf<"response">): FitJob {
  const { table } = body;
  const columns: Columns =
    typeof table === "string"
      ? readMeasurements(table, "table")
      : { frequenciesHz: table.frequencies, values: table.levels };
  checkColumns(columns, false);
  const { frequenciesHz, values } = columns;
  const known = { ...knownOf(body), load: across(body.load) };
  return { method: "response", table: { frequenciesHz, levelsDb: values }, known };
}

function read(body: MeasuredBody): FitJob {
  switch (body.method) {
    case "resonances":
      return resonancesJob(body);
    case "impedance":
      return impedanceJob(body);
    case "response":
      return responseJob(body);
  }
}

function residualsOf(job: FitJob, errors: Float64Array): FittedAnswer["residuals"] {
  if (job.method === "resonances")
    return job.readings.map(({ frequencyHz }, i) => ({ of: "frequency", frequency: frequencyHz, error: errors[i]! }));
  const { frequenciesHz } = job.table;
  return Array.from(errors, (error, i) => ({
    of: i < frequenciesHz.length ? "magnitude" : "phase",
    frequency: frequenciesHz[i % frequenciesHz.length]!,
    error,
  }));
}

function answerOf(job: FitJob, { coil, loss, errors, ...fit }: Fit): FittedAnswer {
  return { method: job.method, coil, lossModel: loss, ...fit, residuals: residualsOf(job, errors) };
}

export const fitJob = {
  read,
  run: (job: FitJob, context: JobContext): FittedAnswer => answerOf(job, runFit(job, context)),
  size: () => "large",
  gate: "render",
} satisfies Job<FitJob, FittedAnswer>;
