import type { Build } from "../../build-file/schema.ts";
import { REFERENCE_CELSIUS } from "../meter/copper.ts";
import { type MeterModel, meterModelOf } from "../meter/meter-model.ts";
import type { ReadingPlan } from "../meter/reading-plan.ts";
import { affordableListenings } from "../solving-effort.ts";
import { Witness } from "../symptoms/witness.ts";
import { type DiagnoseRequest, observed, plansOf } from "./diagnose-request.ts";
import { affordableFaults } from "./diagnosis-effort.ts";
import { FAULT_WEIGHTS, type Fault } from "./fault.ts";
import { type Group, groupEqual } from "./hypotheses/groups.ts";
import { hearSymptoms } from "./hypotheses/hear-symptoms.ts";
import { Hypotheses } from "./hypotheses/hypotheses.ts";
import { byScore, type Hypothesis } from "./hypotheses/hypothesis.ts";
import { OtherValues } from "./hypotheses/other-values.ts";
import { createPrior } from "./hypotheses/prior.ts";
import { Weigher } from "./hypotheses/weigher.ts";
import { singleFaults } from "./kinds/single-faults.ts";
import { Likelihood } from "./likelihood/likelihood.ts";
import type { Observation } from "./likelihood/observation.ts";
import { questionsOf } from "./likelihood/questions.ts";

/** How much of what can be wrong was weighed: all single faults of a usual guard; the commonest of a huge one. */
export interface Considered {
  readonly singles: number;
  readonly ofSingles: number;
  readonly pairs: number;
}

/** Everything weighed, for an answer and for checks on it. */
export interface Judgement {
  readonly model: MeterModel;
  readonly plans: readonly ReadingPlan[];
  readonly observations: readonly Observation[];
  readonly groups: readonly Group[];
  readonly considered: Considered;
}

/** A single fault that explains no better than this does so by chance as well as not: one true one in a hundred. */
const DOUBTFUL_FIT = 0.01;

/** Whether every single explanation leaves a reading unexplained or nearly so, so that two faults at once are worth a look. */
function leavesDoubt(singles: readonly Hypothesis[]): boolean {
  return singles.every(({ explains, evidence }) => !explains || evidence.fit < DOUBTFUL_FIT);
}

/** The commonest faults first where not all can be weighed, else all in their own order. */
function commonest(faults: readonly Fault[], count: number): readonly Fault[] {
  if (faults.length <= count) return faults;
  return [...faults].sort((a, b) => FAULT_WEIGHTS[b.kind] - FAULT_WEIGHTS[a.kind]).slice(0, count);
}

function likelihoodFor({ parts }: MeterModel, observations: readonly Observation[]): Likelihood {
  const tolerances = parts.parameters.map(({ tolerance }) => tolerance.fraction);
  return new Likelihood(observations, tolerances, tolerances.length + parts.tracks.length);
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
  const witness = new Witness(build, model, request.symptoms ?? []);
  const listenings = affordableListenings(build);
  const heard = (weighed: Hypothesis[]) => hearSymptoms(weighed.sort(byScore), witness, listenings, checkpoint);

  const prior = createPrior(faults, !witness.isSilent);
  const weigher = new Weigher(model, questions, likelihoodFor(model, observations), prior);
  const hypotheses = new Hypotheses(weigher, faults, checkpoint);
  const otherValues = new OtherValues(build, weigher, checkpoint);
  const singles = heard([...hypotheses.singles(), ...otherValues.singles(affordable)]);
  const weighedBefore = weigher.count;
  const pairs = leavesDoubt(singles)
    ? [...hypotheses.pairs(singles, affordable), ...otherValues.beside(singles, affordable)]
    : [];
  checkpoint();
  return {
    model,
    plans,
    observations,
    groups: groupEqual([...singles, ...heard(pairs)]),
    considered: { singles: faults.length, ofSingles: all.length, pairs: weigher.count - weighedBefore },
  };
}
