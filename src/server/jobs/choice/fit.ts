import type { LossModel } from "../../../choice/fit/coil-shapes.ts";
import { type FitJob, runFit } from "../../../choice/fit/fit-job.ts";
import type { RatioSweep } from "../../../choice/fit/loaded-ratio.ts";
import { readMeasurements } from "../../../choice/fit/measurement-csv.ts";
import { ratioFromImpedance } from "../../../choice/fit/ratio-from-impedance.ts";
import type { AcrossBody, FitBody, FittedAnswer, LoadBody } from "../../../contract/fit.ts";
import { faultAt } from "../../../errors.ts";
import { MAX_FIT_POINTS } from "../../../limits.ts";
import type { Job, JobContext } from "../../work/job.ts";
import { fittedAnswerOf } from "./fit-answer.ts";
import { type Columns, checkedColumns } from "./fit-columns.ts";

type MeasuredBody = Exclude<FitBody, { method: "resistance" }>;
type BodyOf<Method extends FitBody["method"]> = Extract<FitBody, { method: Method }>;

export function across(given: AcrossBody | undefined) {
  return { resistance: given?.resistance ?? Number.POSITIVE_INFINITY, capacitance: given?.capacitance ?? 0 };
}

function resonancesJob(body: BodyOf<"resonances">): FitJob {
  const { resistance, resistancePrecision, peakOf, precision, type } = body;
  const readings = body.readings.map(({ capacitance, frequency }) => ({
    capacitanceFarads: capacitance,
    frequencyHz: frequency,
  }));
  const known = { ohms: resistance, precision: resistancePrecision };
  return {
    method: "resonances",
    readings,
    setup: { resistance: known, peakOf, across: across(body.across), precision, type },
  };
}

/** A load with its tolerance, where that is told. */
export const knownLoad = (given: LoadBody | undefined) => ({ ...across(given), tolerance: given?.tolerance });

/** What a request says beside its measurements. */
interface Beside {
  readonly resistance?: number | undefined;
  readonly resistancePrecision: number;
  readonly precision?: number | undefined;
  readonly loss?: LossModel | undefined;
}

export function knownOf({ resistance, resistancePrecision, precision, loss }: Beside) {
  return {
    resistance: resistance === undefined ? undefined : { ohms: resistance, precision: resistancePrecision },
    precision,
    models: loss && [loss],
  };
}

function impedanceColumns({ table }: BodyOf<"impedance">): Columns {
  if (typeof table === "string") return checkedColumns(readMeasurements(table, "table"), true);
  const { frequencies, ohms, degrees, errors } = table;
  return checkedColumns({ frequenciesHz: frequencies, values: ohms, thirds: degrees, errors }, true);
}

function impedanceJob(body: BodyOf<"impedance">): FitJob {
  const { frequenciesHz, values, thirds, errors } = impedanceColumns(body);
  if (errors && body.precision !== undefined)
    throw faultAt("REQUEST_INVALID", "precision", "is given beside table.errors; expected only one of the two");
  const table = { frequenciesHz, ohms: values, degrees: thirds, errors };
  const known = { ...knownOf(body), across: across(body.across) };
  if (!body.load) return { method: "impedance", table, known };
  requireLoad(body.load, "load");
  if (!thirds) throw faultAt("REQUEST_INVALID", "table", "has no degrees; expected them where a load is given");
  const { tolerance } = body.load;
  const sweep = ratioFromImpedance(table, thirds, across(body.load), body.precision, tolerance);
  return { method: "two-loads", sweeps: [sweep], known };
}

function requireLoad({ resistance, capacitance }: AcrossBody, path: string): void {
  if (resistance === undefined && capacitance === 0)
    throw faultAt("REQUEST_INVALID", path, "is no load; expected a resistance, a capacitance or both");
}

function responseJob(body: BodyOf<"response">): FitJob {
  const { table } = body;
  const columns: Columns =
    typeof table === "string"
      ? readMeasurements(table, "table")
      : { frequenciesHz: table.frequencies, values: table.levels };
  const { frequenciesHz, values } = checkedColumns(columns, false);
  const known = { ...knownOf(body), load: across(body.load) };
  return { method: "response", table: { frequenciesHz, levelsDb: values }, known };
}

type Ratio = NonNullable<BodyOf<"two-loads">["second"]>;

function sweepOf({ table, load }: Ratio, path: string): RatioSweep {
  const columns: Columns =
    typeof table === "string"
      ? readMeasurements(table, `${path}table`)
      : { frequenciesHz: table.frequencies, values: table.decibels, thirds: table.degrees };
  const { frequenciesHz, values, thirds } = checkedColumns(columns, false, path);
  if (!thirds) throw faultAt("REQUEST_INVALID", `${path}table`, "has no third column; expected Hz, dB and degrees");
  requireLoad(load, `${path}load`);
  return { frequenciesHz, levelsDb: values, degrees: thirds, load: across(load), tolerance: load.tolerance };
}

function twoLoadsJob(body: BodyOf<"two-loads">): FitJob {
  const sweeps = [sweepOf(body, ""), ...(body.second ? [sweepOf(body.second, "second.")] : [])];
  const lines = sweeps.reduce((sum, { frequenciesHz }) => sum + frequenciesHz.length, 0);
  if (lines > MAX_FIT_POINTS)
    throw faultAt(
      "REQUEST_INVALID",
      "second.table",
      `makes ${lines} lines of both; expected at most ${MAX_FIT_POINTS}`,
    );
  return { method: "two-loads", sweeps, known: { ...knownOf(body), across: across(body.across) } };
}

function read(body: MeasuredBody): FitJob {
  switch (body.method) {
    case "resonances":
      return resonancesJob(body);
    case "impedance":
      return impedanceJob(body);
    case "response":
      return responseJob(body);
    case "two-loads":
      return twoLoadsJob(body);
  }
}

export const fitJob = {
  read,
  run: (job: FitJob, context: JobContext): FittedAnswer => fittedAnswerOf(job, runFit(job, context)),
  size: () => "large",
  gate: "render",
} satisfies Job<FitJob, FittedAnswer>;
