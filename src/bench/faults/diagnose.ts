import type { Build } from "../../build-file/schema.ts";
import { Controls } from "../../build-file/settings.ts";
import { faultAt } from "../../errors.ts";
import { REFERENCE_CELSIUS } from "../meter/copper.ts";
import { type MeterModel, type MeterState, meterModelOf, meterStateOf } from "../meter/meter-model.ts";
import { type ProbeRequest, planOf, sweptTrackOf } from "../meter/readings.ts";
import type { ReadingPlan } from "../meter/standing-readings.ts";
import { type Symptom, Witness } from "../symptoms/witness.ts";
import { type Explanation, explanationsOf, type Group, groupEqual, tenable } from "./answer/explanations.ts";
import { NOTHING_MEASURED, unexplained } from "./answer/unexplained.ts";
import { affordableFaults, affordableListenings, affordableReadings } from "./effort.ts";
import { FAULT_WEIGHTS, type Fault } from "./fault.ts";
import { byScore, Court, type Hypothesis, score } from "./hypotheses/hypotheses.ts";
import { singleFaults } from "./kinds/single-faults.ts";
import { type Observation, observe, observeAbove, Scales } from "./likelihood/likelihood.ts";
import type { Question } from "./likelihood/predictor.ts";
import { type NextListening, nextListening } from "./next/next-listening.ts";
import { type NextMeasurement, nextMeasurement, planKey } from "./next/next-measurement.ts";
import { suspectsOf } from "./next/suspects.ts";

/** What the person measured. */
export interface MeasuredReading extends ProbeRequest {
  /** Ohms; null where the meter showed an open circuit on its highest range. */
  readonly ohms?: number | null | undefined;
  /** Instead of `ohms`: the end of the range, in ohms, that the meter was over. */
  readonly above?: number | undefined;
  /** Between what the display wandered; without them, or where they do not hold `ohms`, the meter's error is 1 %. */
  readonly low?: number | null | undefined;
  readonly high?: number | null | undefined;
}

export interface DiagnoseRequest {
  readonly readings: readonly MeasuredReading[];
  readonly symptoms?: readonly Symptom[];
  /** °C of the coils. */
  readonly temperature?: number;
}

/** How much of what can be wrong was weighed: all single faults of a usual guard; the commonest of a huge one. */
export interface Considered {
  readonly singles: number;
  readonly ofSingles: number;
  readonly pairs: number;
}

export interface Diagnosis {
  readonly considered: Considered;
  /** Those that account for every reading first, the likelier before the others. */
  readonly explanations: readonly Explanation[];
  /** What was taken otherwise than it was written. */
  readonly notes: readonly string[];
  /** With a meter where that tells the leading explanations apart, else by ear. */
  readonly nextMeasurement: NextMeasurement | NextListening | null;
}

/** Whether the display cannot have wandered between these bounds and shown this: they are another reading's, or a tolerance. */
function areForeignBounds({ ohms, low, high }: MeasuredReading): boolean {
  if (ohms === undefined || low === undefined || high === undefined) return false;
  if (ohms === null || low === null || high === null) return ohms !== null || (low !== null && high !== null);
  return ohms < low || ohms > high;
}

function checkBounds({ low, high }: MeasuredReading, path: string): void {
  if (typeof low === "number" && typeof high === "number" && low > high)
    throw faultAt("REQUEST_INVALID", `${path}.low`, `is ${low} ohms; expected at most the high of ${high} ohms`);
}

function noteOn(reading: MeasuredReading, index: number): string[] {
  if (!areForeignBounds(reading)) return [];
  const [ohms, low, high] = [reading.ohms, reading.low, reading.high].map((each) => each ?? "open");
  return [
    `readings.${index}: ${ohms} is not between low (${low}) and high (${high}), so these are not what the display wandered between; the meter's error is taken as 1 %.`,
  ];
}

function observed(reading: MeasuredReading): Observation {
  const { above, ohms = null, low, high } = reading;
  if (above !== undefined) return observeAbove(above);
  return areForeignBounds(reading) ? observe(ohms) : observe(ohms, low, high);
}

/** Readings as questions; equal settings share one state, which is prepared once. */
function questionsOf(model: MeterModel, plans: readonly ReadingPlan[]): Question[] {
  const states = new Map<string, MeterState>();
  const { lugs } = model.parts;
  return plans.map(({ between, settings, sweep }) => {
    const key = JSON.stringify([Object.entries(settings.dials), Object.entries(settings.switches)]);
    const state = states.get(key) ?? meterStateOf(model, settings);
    states.set(key, state);
    const probes = {
      from: lugs.indexOf(between[0]),
      to: lugs.indexOf(between[1]),
      sweptTrack: sweptTrackOf(model, sweep),
    };
    return { state, probes };
  });
}

/** A single fault that explains no better than this does so by chance as well as not: one true one in a hundred. */
const DOUBTFUL_FIT = 0.01;

/** Whether every single explanation leaves a reading unexplained or nearly so, so that two faults at once are worth a look. */
function leavesDoubt(singles: readonly Hypothesis[]): boolean {
  return singles.every(({ explains, evidence }) => !explains || evidence.fit < DOUBTFUL_FIT);
}

/** Hypotheses further behind the best by readings than this, in nats, cannot be brought back by what was heard. */
const HOPELESS = 40;

/** The same hypotheses with what was heard weighed too; those out of the running keep the worst that any of the others got. */
function hearWitness(
  hypotheses: Hypothesis[],
  witness: Witness,
  affordable: number,
  checkpoint: () => void,
): Hypothesis[] {
  const most = Math.floor(affordable / Math.max(1, witness.listenings));
  if (witness.isSilent || hypotheses.length === 0) return hypotheses;
  const best = score(hypotheses[0]!);
  let worst = 0;
  const heard = hypotheses.map((hypothesis, index) => {
    if (index >= most || score(hypothesis) < best - HOPELESS) return { ...hypothesis, logSymptoms: worst };
    if (index % 20 === 0) checkpoint();
    const edits = hypothesis.faults.flatMap((fault) => fault.edits);
    const logSymptoms = witness.logChance({ edits, model: hypothesis.model });
    worst = Math.min(worst, logSymptoms);
    return { ...hypothesis, logSymptoms };
  });
  return heard.sort(byScore);
}

/** The commonest faults first where not all can be weighed, else all in their own order. */
function commonest(faults: readonly Fault[], count: number): readonly Fault[] {
  if (faults.length <= count) return faults;
  return [...faults].sort((a, b) => FAULT_WEIGHTS[b.kind] - FAULT_WEIGHTS[a.kind]).slice(0, count);
}

/** Everything weighed, for an answer and for checks on it. */
export interface Judgement {
  readonly model: MeterModel;
  readonly plans: readonly ReadingPlan[];
  readonly observations: readonly Observation[];
  readonly groups: readonly Group[];
  readonly considered: Considered;
}

/**
 * Weighs every single fault that this very build can have, every part of another value, and where none of them accounts for all
 * readings, the likeliest pairs.
 * @throws PresolderError REQUEST_INVALID or SETTINGS_INVALID naming the field at fault
 */
export function judge(build: Build, request: DiagnoseRequest, checkpoint: () => void = () => {}): Judgement {
  const plans = plansOf(build, request.readings);
  const observations = request.readings.map(observed);
  const model = meterModelOf(build, request.temperature ?? REFERENCE_CELSIUS);
  const questions = questionsOf(model, plans);
  const all = singleFaults(build);
  const affordable = affordableFaults(model, questions);
  const faults = commonest(all, affordable);
  const listenings = affordableListenings(build);
  const witness = new Witness(build, model, request.symptoms ?? []);
  const court = new Court(model, questions, scalesFor(model, observations), faults, !witness.isSilent, checkpoint);
  const found = [...court.singles(), ...court.values(build, affordable)].sort(byScore);
  const singles = hearWitness(found, witness, listenings, checkpoint);
  const before = court.heardCount;
  const pairs = leavesDoubt(singles)
    ? [...court.pairs(singles, affordable), ...court.valuesBeside(build, singles, affordable)]
    : [];
  checkpoint();
  return {
    model,
    plans,
    observations,
    groups: groupEqual([...singles, ...hearWitness(pairs.sort(byScore), witness, listenings, checkpoint)]),
    considered: { singles: faults.length, ofSingles: all.length, pairs: court.heardCount - before },
  };
}

function explanationsFor({ plans, observations, groups }: Judgement, isSilent: boolean): Explanation[] {
  if (isSilent) return [NOTHING_MEASURED];
  const explanations = explanationsOf(groups);
  const [best] = groups;
  return best?.members[0]?.explains ? explanations : [unexplained(plans, observations, groups), ...explanations];
}

/**
 * Ranks what may be wrong with a guard: first what accounts for every reading, the likelier before the others. Where nothing
 * does, an explanation of kind "unexplained" comes first and says which readings to take again.
 * @param checkpoint called now and then; may throw to stop the work
 * @throws PresolderError REQUEST_INVALID or SETTINGS_INVALID naming the field at fault
 */
export function diagnose(build: Build, request: DiagnoseRequest, checkpoint: () => void = () => {}): Diagnosis {
  const judgement = judge(build, request, checkpoint);
  const { model, plans, groups, considered } = judgement;
  const suspects = suspectsOf(tenable(groups));
  const next = nextMeasurement(build, model, suspects, new Set(plans.map(planKey)), affordableReadings(model));
  const isSilent = plans.length === 0 && (request.symptoms ?? []).length === 0;
  return {
    considered,
    explanations: explanationsFor(judgement, isSilent),
    notes: request.readings.flatMap(noteOn),
    nextMeasurement: next ?? nextListening(build, model, suspects, affordableListenings(build)),
  };
}

function plansOf(build: Build, readings: readonly MeasuredReading[]): ReadingPlan[] {
  const controls = new Controls(build);
  return readings.map((reading, index) => {
    checkBounds(reading, `readings.${index}`);
    return planOf(build, controls, reading, `readings.${index}`);
  });
}

function scalesFor({ parts: { parameters, tracks } }: MeterModel, observations: readonly Observation[]): Scales {
  return new Scales(
    observations,
    parameters.map(({ tolerance }) => tolerance.fraction),
    parameters.length + tracks.length,
  );
}
