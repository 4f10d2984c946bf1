import { type FitJob, runFit } from "../../../choice/fit/fit-job.ts";
import type { RatioSweep } from "../../../choice/fit/loaded-ratio.ts";
import type { MeasureAnswer, MeasureBody, RecordingName } from "../../../contract/measure/measure.ts";
import { faultAt } from "../../../errors.ts";
import { requireLoaded } from "../../../measure/methods/load-order.ts";
import { requireReference } from "../../../measure/methods/reference.ts";
import { ratioOfLoads } from "../../../measure/methods/two-loads.ts";
import { underInput } from "../../../measure/methods/unknown-input.ts";
import { over, readBoth, readLouder } from "../../../measure/recording/channels.ts";
import { requireOneSound } from "../../../measure/recording/one-sound.ts";
import type { Job, JobContext } from "../../work/job.ts";
import { across, knownLoad, knownOf } from "../choice/fit.ts";
import { fittedAnswerOf } from "../choice/fit-answer.ts";
import { exciterAnswer, requireExciter } from "./measure-exciter.ts";
import { type Files, recordedAs, recordingTold, requireFiles, requireMeasurable } from "./measure-files.ts";
import { behindResistor, requireBehindResistor } from "./measure-resistor.ts";

type BodyOf<Method extends MeasureBody["method"]> = Extract<MeasureBody, { method: Method }>;
type AnswerOf<Method extends MeasureAnswer["method"]> = Extract<MeasureAnswer, { method: Method }>;
type Recordings = MeasureAnswer["recordings"][number][];

interface MeasureJob {
  readonly body: MeasureBody;
  readonly files: Files;
}

function read(body: MeasureBody, files: Files | undefined): MeasureJob {
  if (!files) throw faultAt("REQUEST_INVALID", "body", "expected a multipart form with the JSON request and WAV files");
  if (body.method === "series-resistor") requireBehindResistor(body, files);
  else if (body.method === "exciter") requireExciter(body, files);
  else requireFiles(files, body.second ? ["unloaded", "loaded", "second"] : ["unloaded", "loaded"], []);
  requireMeasurable(files);
  return { body, files };
}

const errorsOf = (errors: readonly number[] | undefined) => [...(errors ?? [])];

function fitOf(job: FitJob, context: JobContext) {
  return fittedAnswerOf(job, runFit(job, context));
}

const WHICH_CHANNEL =
  "say in `reference` which of them, first or second, is the signal itself, or send the pickup's channel alone";

/** The pickup's transfer in one file, its reference divided out where there is one. */
function pickupIn(name: RecordingName, { signal, reference }: BodyOf<"two-loads">, files: Files, told: Recordings) {
  if (reference === undefined) {
    const recording = recordedAs(name, files, 1);
    requireOneSound(recording.channels, name, WHICH_CHANNEL);
    const reading = readLouder(signal, recording);
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
  const ratio = (name: RecordingName, load: typeof body.load) => {
    const sweep = ratioOfLoads(unloaded, pickup(name), knownLoad(load), freeDelay, name);
    requireLoaded(sweep, name);
    return sweep;
  };
  const sweeps = [ratio("loaded", body.load), ...(body.second ? [ratio("second", body.second)] : [])];
  const known = { ...knownOf(body), across: across(body.across) };
  const fit = fitOf({ method: "two-loads", sweeps, known }, context);
  const isStated = body.across?.capacitance !== undefined;
  return { method: "two-loads", recordings, ratios: sweeps.map(ratioAnswer), fit: underInput(fit, isStated) };
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
