import type { FitJob } from "../../choice/fit/fit-job.ts";
import { runFit } from "../../choice/fit/fit-job.ts";
import type { RatioSweep } from "../../choice/fit/loaded-ratio.ts";
import type { MeasureAnswer, MeasureBody, RecordingName } from "../../contract/measure/measure.ts";
import { faultAt } from "../../errors.ts";
import { impedanceBehind, type Point, ratiosOf, requireOrder, tableOf } from "../../measure/methods/behind-resistor.ts";
import { capacitorOf, resistorOf } from "../../measure/methods/part-values.ts";
import { requireReference } from "../../measure/methods/reference.ts";
import { ratioOfLoads } from "../../measure/methods/two-loads.ts";
import { over, readBoth, readLouder } from "../../measure/recording/channels.ts";
import type { Transfer } from "../../measure/recording/passes.ts";
import type { Job, JobContext } from "../work/job.ts";
import { across, knownOf } from "./fit.ts";
import { fittedAnswerOf } from "./fit-answer.ts";
import { exciterAnswer, requireExciter } from "./measure-exciter.ts";
import { type Files, recordedAs, recordingTold, requireFiles } from "./measure-files.ts";

type BodyOf<Method extends MeasureBody["method"]> = Extract<MeasureBody, { method: Method }>;
type AnswerOf<Method extends MeasureAnswer["method"]> = Extract<MeasureAnswer, { method: Method }>;
type Recordings = MeasureAnswer["recordings"][number][];

interface MeasureJob {
  readonly body: MeasureBody;
  readonly files: Files;
}

function read(body: MeasureBody, files: Files | undefined): MeasureJob {
  if (!files) throw faultAt("REQUEST_INVALID", "body", "expected a multipart form with the JSON request and WAV files");
  if (body.method === "series-resistor") requireFiles(files, ["measured"], ["gain", "open", "short"]);
  else if (body.method === "exciter") requireExciter(body, files);
  else requireFiles(files, body.second ? ["unloaded", "loaded", "second"] : ["unloaded", "loaded"], []);
  return { body, files };
}

const errorsOf = (errors: readonly number[] | undefined) => [...(errors ?? [])];

function fitOf(job: FitJob, context: JobContext) {
  return fittedAnswerOf(job, runFit(job, context));
}

/** The pickup's transfer in one file, its reference divided out where there is one. */
function pickupIn(name: RecordingName, { signal, reference }: BodyOf<"two-loads">, files: Files, told: Recordings) {
  if (reference === undefined) {
    const reading = readLouder(signal, recordedAs(name, files, 1));
    told.push(recordingTold(name, reading));
    return reading;
  }
  const order = reference === "first" ? ([0, 1] as const) : ([1, 0] as const);
  const [itself, pickup] = readBoth(signal, recordedAs(name, files, 2), order);
  told.push(recordingTold(name, itself, pickup));
  requireReference(itself, pickup, reference, name);
  return over(pickup, itself);
}

function ratioAnswer({ frequenciesHz, levelsDb, degrees, errors }: RatioSweep) {
  return {
    frequencies: [...frequenciesHz],
    decibels: [...levelsDb],
    degrees: [...degrees],
    errors: errorsOf(errors),
  };
}

function twoLoads(body: BodyOf<"two-loads">, files: Files, context: JobContext): AnswerOf<"two-loads"> {
  const recordings: Recordings = [];
  const pickup = (name: RecordingName) => {
    context.checkpoint();
    return pickupIn(name, body, files, recordings);
  };
  const unloaded = pickup("unloaded");
  const freeDelay = body.reference === undefined;
  const ratio = (loaded: Transfer, load: typeof body.load) => ratioOfLoads(unloaded, loaded, across(load), freeDelay);
  const sweeps = [ratio(pickup("loaded"), body.load), ...(body.second ? [ratio(pickup("second"), body.second)] : [])];
  const known = { ...knownOf(body), across: across(body.across) };
  const fit = fitOf({ method: "two-loads", sweeps, known }, context);
  return { method: "two-loads", recordings, ratios: sweeps.map(ratioAnswer), fit };
}

function partOf(body: BodyOf<"series-resistor">, points: readonly Point[], context: JobContext) {
  switch (body.part) {
    case "coil":
      return { fit: fitOf({ method: "impedance", table: tableOf(points), known: knownOf(body) }, context) };
    case "resistor":
      return resistorOf(points);
    case "capacitor":
    case "lead":
      return capacitorOf(points);
  }
}

/** @throws DATA_INSUFFICIENT where the part named is not what was measured */
function requireTold(part: string, told: object): void {
  if (Object.keys(told).length > 0) return;
  const message = `what was measured is no ${part}: its current does not lead the voltage; say which part it is`;
  throw faultAt("DATA_INSUFFICIENT", "part", message);
}

function behindResistor(
  body: BodyOf<"series-resistor">,
  files: Files,
  context: JobContext,
): AnswerOf<"series-resistor"> {
  const recordings: Recordings = [];
  const order = body.channels === "before-behind" ? ([0, 1] as const) : ([1, 0] as const);
  let frequenciesHz = new Float64Array(0);
  const ratios = (name: RecordingName) => {
    if (!files[name]) return undefined;
    context.checkpoint();
    const [before, behind] = readBoth(body.signal, recordedAs(name, files, 2), order);
    recordings.push(recordingTold(name, before, behind));
    frequenciesHz = Float64Array.from(before.frequenciesHz);
    const found = ratiosOf({ before, behind });
    requireOrder(found, name);
    return found;
  };
  const measured = ratios("measured")!;
  const rig = { gain: ratios("gain"), open: ratios("open"), short: ratios("short") };
  const points = impedanceBehind(measured, frequenciesHz, body.resistor, rig);
  const told = partOf(body, points, context);
  requireTold(body.part, told);
  const { frequenciesHz: frequencies, ohms, degrees, errors } = tableOf(points);
  return {
    method: "series-resistor",
    recordings,
    impedance: {
      frequencies: [...frequencies],
      ohms: [...ohms],
      degrees: [...(degrees ?? [])],
      errors: errorsOf(errors),
    },
    ...told,
    scaleError: body.resistorTolerance,
  };
}

function run({ body, files }: MeasureJob, context: JobContext): MeasureAnswer {
  switch (body.method) {
    case "two-loads":
      return twoLoads(body, files, context);
    case "series-resistor":
      return behindResistor(body, files, context);
    case "exciter":
      return exciterAnswer(body, files, context);
  }
}

export const measureJob = { read, run, size: () => "large", gate: "set" } satisfies Job<MeasureJob, MeasureAnswer>;
