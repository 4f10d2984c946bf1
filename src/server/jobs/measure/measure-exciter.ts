import { type FitJob, runFit } from "../../../choice/fit/fit-job.ts";
import type { MeasureAnswer, MeasureBody, RecordingName } from "../../../contract/measure/measure.ts";
import { NEPERS_OF_AMPLITUDE_PER_DB } from "../../../decibels.ts";
import { type InputFault, refused } from "../../../errors.ts";
import type { HeardCoil, Reference } from "../../../measure/emf/emf-slope.ts";
import { coilOfFit, coilWithin } from "../../../measure/emf/known-coil.ts";
import { type MetalFound, metalAbout, SYSTEMATIC } from "../../../measure/methods/exciter.ts";
import { requireLoaded } from "../../../measure/methods/load-order.ts";
import { ratioOfLoads } from "../../../measure/methods/two-loads.ts";
import { readLouder } from "../../../measure/recording/channels.ts";
import { requireOneSound } from "../../../measure/recording/one-sound.ts";
import type { Transfer } from "../../../measure/recording/passes.ts";
import type { JobContext } from "../../work/job.ts";
import { across, knownLoad, knownOf } from "../choice/fit.ts";
import { fittedAnswerOf } from "../choice/fit-answer.ts";
import { type Files, recordedAs, recordingTold, requireFiles } from "./measure-files.ts";

type ExciterBody = Extract<MeasureBody, { method: "exciter" }>;
type ExciterAnswer = Extract<MeasureAnswer, { method: "exciter" }>;
type Hear = (name: RecordingName) => Transfer;

const ONLY_FITTED = ["load", "second", "resistance", "loss"] as const;
const NO_USE = "has no use where `coil` has the pickup's values; expected one of the two";
const NO_LOAD = "is missing; expected what hung across the pickup in `loaded`, or `coil` with its values";

function faultsOf(body: ExciterBody): InputFault[] {
  if (!body.coil) return body.load ? [] : [{ path: "load", message: NO_LOAD }];
  return ONLY_FITTED.filter((path) => body[path] !== undefined).map((path) => ({ path, message: NO_USE }));
}

/** @throws REQUEST_INVALID where the pickup's coil is neither given nor recorded under a load, or both; or a file is missing */
export function requireExciter(body: ExciterBody, files: Files): void {
  const faults = faultsOf(body);
  if (faults.length > 0) throw refused("REQUEST_INVALID", faults);
  const needed: RecordingName[] = ["unloaded"];
  if (!body.coil) needed.push("loaded");
  if (!body.coil && body.second) needed.push("second");
  if (body.reference.kind === "coil") needed.push("referenceCoil");
  requireFiles(files, needed, []);
}

/** The pickup with its coil's values, as they were given or as its recordings under loads tell them. */
function pickupOf(body: ExciterBody, hear: Hear, context: JobContext) {
  const input = across(body.across);
  const heard = hear("unloaded");
  if (body.coil) return { pickup: { ...coilWithin(body.coil, input, body.coilPrecision), heard }, fit: undefined };
  const ratio = (name: RecordingName, load: typeof body.load) => {
    const sweep = ratioOfLoads(heard, hear(name), knownLoad(load), true, name);
    requireLoaded(sweep, name);
    return sweep;
  };
  const sweeps = [ratio("loaded", body.load), ...(body.second ? [ratio("second", body.second)] : [])];
  const job: FitJob = { method: "two-loads", sweeps, known: { ...knownOf(body), across: input } };
  const fit = runFit(job, context);
  const pickup: HeardCoil = { ...coilOfFit(fit, input), heard };
  return { pickup, fit: fittedAnswerOf(job, fit) };
}

function referenceOf({ reference, across: input }: ExciterBody, hear: Hear): Reference {
  if (reference.kind === "coil") {
    const { coil, precision } = reference;
    return { kind: "coil", ...coilWithin(coil, across(input), precision), heard: hear("referenceCoil") };
  }
  const { corner, exciterCorner = Number.POSITIVE_INFINITY } = reference;
  return { kind: "integrator", cornerHz: corner, exciterCornerHz: exciterCorner };
}

const decibelsOf = (nepers: readonly number[]) => nepers.map((each) => each / NEPERS_OF_AMPLITUDE_PER_DB);

function metalAnswer({ slope, errors, law, metals, values, left, considered, notes }: MetalFound) {
  return {
    slope: {
      frequencies: [...slope.frequenciesHz],
      decibels: decibelsOf(slope.nepers),
      errors: decibelsOf(errors),
    },
    law,
    shielding: [...metals],
    values: values.map(({ name, value, standardError, low, high }) => ({ name, value, standardError, low, high })),
    left: left / NEPERS_OF_AMPLITUDE_PER_DB,
    systematic: SYSTEMATIC.map(({ frequencyHz, decibels }) => ({ frequency: frequencyHz, decibels })),
    considered: [...considered],
    notes: [...notes],
  };
}

/** What metal takes of a pickup's EMF, from recordings under one exciter. */
export function exciterAnswer(body: ExciterBody, files: Files, context: JobContext): ExciterAnswer {
  const recordings: ExciterAnswer["recordings"][number][] = [];
  const hear: Hear = (name) => {
    context.checkpoint();
    const recording = recordedAs(name, files, 1);
    requireOneSound(recording.channels, name, "send the coil's channel alone");
    const reading = readLouder(body.signal, recording);
    recordings.push(recordingTold(name, reading));
    return reading;
  };
  const { pickup, fit } = pickupOf(body, hear, context);
  const found = metalAbout(pickup, referenceOf(body, hear), context);
  return { method: "exciter", recordings, ...metalAnswer(found), ...(fit ? { fit } : {}) };
}
