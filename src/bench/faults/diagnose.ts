import type { Build } from "../../build/schema.ts";
import { Controls } from "../../build/settings.ts";
import { faultAt } from "../../errors.ts";
import { REFERENCE_CELSIUS } from "../copper.ts";
import { type MeterModel, type MeterState, meterModelOf, meterStateOf } from "../meter/meter-model.ts";
import { type ProbeRequest, planOf, sweptTrackOf } from "../meter/readings.ts";
import type { ReadingPlan } from "../meter/standing-readings.ts";
import { type Symptom, Witness } from "../symptoms/witness.ts";
import { singleFaults } from "./all-faults.ts";
import { affordableFaults, affordableListenings, affordableReadings } from "./effort.ts";
import { observe, Scales } from "./evidence.ts";
import { type Explanation, explanationsOf, groupEqual } from "./explanations.ts";
import { FAULT_WEIGHTS, type Fault } from "./fault.ts";
import { Court, type Hypothesis, score } from "./hypotheses.ts";
import { type NextListening, nextListening } from "./next-listening.ts";
import { type NextMeasurement, nextMeasurement, planKey } from "./next-measurement.ts";
import type { Question } from "./predictor.ts";
import { suspectsOf } from "./suspects.ts";

/** What the person measured. */
export interface MeasuredReading extends ProbeRequest {
  /** Ohms; null where the meter showed an open circuit. */
  readonly ohms: number | null;
  /** Between what the display wandered; without them the meter's error is 1 %. */
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
  readonly explanations: readonly Explanation[];
  /** With a meter where that tells the leading explanations apart, else by ear. */
  readonly nextMeasurement: NextMeasurement | NextListening | null;
}

function checkBounds({ ohms, low, high }: MeasuredReading, path: string): void {
  if (ohms === null || low === null || high === null || low === undefined || high === undefined) return;
  if (!(low <= ohms && ohms <= high))
    throw faultAt("REQUEST_INVALID", path, `has low ${low}, ohms ${ohms}, high ${high}; expected them in this order`);
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

/** Whether the best single explanation leaves a reading unexplained, so that two faults at once are worth a look. */
function leavesDoubt([best]: readonly Hypothesis[]): boolean {
  return best !== undefined && best.evidence.misses > 0;
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
  return heard.sort((a, b) => score(b) - score(a));
}

/** The commonest faults first where not all can be weighed, else all in their own order. */
function commonest(faults: readonly Fault[], count: number): readonly Fault[] {
  if (faults.length <= count) return faults;
  return [...faults].sort((a, b) => FAULT_WEIGHTS[b.kind] - FAULT_WEIGHTS[a.kind]).slice(0, count);
}

/**
 * Ranks what may be wrong with a guard by how well it explains the readings: every single fault that this very build can have,
 * and where none of them explains all, the likeliest pairs.
 * @param checkpoint called now and then; may throw to stop the work
 * @throws PresolderError REQUEST_INVALID or SETTINGS_INVALID naming the field at fault
 */
export function diagnose(build: Build, request: DiagnoseRequest, checkpoint: () => void = () => {}): Diagnosis {
  const plans = plansOf(build, request.readings);
  const model = meterModelOf(build, request.temperature ?? REFERENCE_CELSIUS);
  const questions = questionsOf(model, plans);
  const all = singleFaults(build);
  const affordable = affordableFaults(model, questions);
  const faults = commonest(all, affordable);
  const listenings = affordableListenings(build);
  const witness = new Witness(build, model, request.symptoms ?? []);
  const court = new Court(model, questions, scalesFor(model, request.readings), faults, !witness.isSilent, checkpoint);
  const singles = hearWitness(court.singles(), witness, listenings, checkpoint);
  const pairs = leavesDoubt(singles)
    ? hearWitness(court.pairs(singles, affordable), witness, listenings, checkpoint)
    : [];
  const groups = groupEqual([...singles, ...pairs]);
  checkpoint();
  const suspects = suspectsOf(groups);
  const next = nextMeasurement(build, model, suspects, new Set(plans.map(planKey)), affordableReadings(model));
  return {
    considered: { singles: faults.length, ofSingles: all.length, pairs: court.heardCount - singles.length },
    explanations: explanationsOf(groups),
    nextMeasurement: next ?? nextListening(build, model, suspects, listenings),
  };
}

function plansOf(build: Build, readings: readonly MeasuredReading[]): ReadingPlan[] {
  const controls = new Controls(build);
  return readings.map((reading, index) => {
    checkBounds(reading, `readings.${index}`);
    return planOf(build, controls, reading, `readings.${index}`);
  });
}

function scalesFor({ parts: { parameters, tracks } }: MeterModel, readings: readonly MeasuredReading[]): Scales {
  return new Scales(
    readings.map(({ ohms, low, high }) => observe(ohms, low, high)),
    parameters.map(({ tolerance }) => tolerance.fraction),
    parameters.length + tracks.length,
  );
}
