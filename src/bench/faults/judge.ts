import type { Build } from "../../build-file/schema.ts";
import { REFERENCE_CELSIUS } from "../meter/copper.ts";
import { type MeterModel, meterModelOf } from "../meter/meter-model.ts";
import type { ReadingPlan } from "../meter/reading-plan.ts";
import { ReadingTaker } from "../meter/reading-taker.ts";
import { affordableListenings } from "../solving-effort.ts";
import { Witness } from "../symptoms/witness.ts";
import { type DiagnoseRequest, observed, plansOf } from "./diagnose-request.ts";
import { affordableFaults } from "./diagnosis-effort.ts";
import { isSpareJoint, withSpareJoint } from "./edits/spare-joint.ts";
import type { Fault } from "./fault.ts";
import { leavesDoubt } from "./hypotheses/doubt.ts";
import { type Group, groupEqual } from "./hypotheses/groups.ts";
import { hearSymptoms } from "./hypotheses/hear-symptoms.ts";
import { singleHypotheses } from "./hypotheses/hypotheses.ts";
import { byScore, type Hypothesis } from "./hypotheses/hypothesis.ts";
import { JOINT_OHMS, OtherValues } from "./hypotheses/other-values.ts";
import { Pairs, withoutIdle } from "./hypotheses/pairs.ts";
import { countFaults, createPrior, type FaultCounts, valueCounts } from "./hypotheses/prior.ts";
import { type Remainder, remainderOf } from "./hypotheses/remainder.ts";
import { Weigher } from "./hypotheses/weigher.ts";
import { guardWiringOf } from "./kinds/guard-wiring.ts";
import { type ResistivePlace, resistivePlaces } from "./kinds/resistive-joints.ts";
import { singleFaults } from "./kinds/single-faults.ts";
import { FREE_PART_DEVIATION } from "./likelihood/joint-normal.ts";
import { Likelihood } from "./likelihood/likelihood.ts";
import type { Observation } from "./likelihood/observation.ts";
import { questionsOf } from "./likelihood/questions.ts";
import { FAULT_SHARES } from "./priors/fault-shares.ts";

/** The ln of what a poor joint has scatters this far about `JOINT_OHMS`: from tens of ohms to a hundred kilohms. */
const FREE_JOINT_DEVIATION = 2.3;
/** Another value is looked for beside so many of the best single faults. */
const VALUE_SEEDS = 6;

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
  /** The guard with nothing wrong. */
  readonly sound: Hypothesis;
  readonly groups: readonly Group[];
  readonly remainder: Remainder;
  readonly considered: Considered;
}

/** The commonest faults first where not all can be weighed, else all in their own order. */
function commonest(faults: readonly Fault[], count: number): readonly Fault[] {
  if (faults.length <= count) return faults;
  return [...faults].sort((a, b) => FAULT_SHARES[b.kind].share - FAULT_SHARES[a.kind].share).slice(0, count);
}

function likelihoodFor({ parts }: MeterModel, observations: readonly Observation[]): Likelihood {
  const unknowns = parts.parameters.map((parameter) => ({
    tolerance: parameter.tolerance.fraction,
    freeDeviation: isSpareJoint(parameter) ? FREE_JOINT_DEVIATION : FREE_PART_DEVIATION,
  }));
  return new Likelihood(observations, unknowns, unknowns.length + parts.tracks.length);
}

/** How many faults of each kind the guard can have, those included whose value the readings are asked for. */
function countsFor(model: MeterModel, faults: readonly Fault[], places: readonly ResistivePlace[]): FaultCounts {
  const atPlaces = places.flatMap((place) => place.faults(JOINT_OHMS));
  return countFaults(
    [...faults, ...atPlaces],
    valueCounts(model.parts.parameters.filter((each) => !isSpareJoint(each))),
  );
}

function observationsOf(
  build: Build,
  { readings, meter }: DiagnoseRequest,
  plans: readonly ReadingPlan[],
  celsius: number,
): Observation[] {
  let taker: ReadingTaker | undefined;
  return readings.map((reading, index) =>
    observed(reading, meter, () => {
      taker ??= new ReadingTaker(build, celsius);
      return taker.take(plans[index]!).ohms;
    }),
  );
}

/**
 * Weighs every single fault that this very build can have, every part and joint of another value, and where none of them
 * explains well enough what was told, the likeliest pairs.
 * @throws PresolderError REQUEST_INVALID or SETTINGS_INVALID naming the field at fault
 */
export function judge(build: Build, request: DiagnoseRequest, checkpoint: () => void = () => {}): Judgement {
  const plans = plansOf(build, request.readings);
  const celsius = request.temperature ?? REFERENCE_CELSIUS;
  const observations = observationsOf(build, request, plans, celsius);
  const model = withSpareJoint(meterModelOf(build, celsius));
  const questions = questionsOf(model, plans);
  const all = singleFaults(build);
  const places = resistivePlaces(guardWiringOf(build));
  const affordable = affordableFaults(model, questions);
  const faults = commonest(all, affordable);
  const symptoms = request.symptoms ?? [];
  const witness = new Witness(build, model, symptoms);
  const listenings = affordableListenings(build);
  const heard = (weighed: Hypothesis[]) => hearSymptoms(weighed.sort(byScore), witness, listenings, checkpoint);

  const counts = countsFor(model, faults, places);
  const prior = createPrior(counts, { isComplainedOf: symptoms.length > 0, joints: request.joints });
  const weigher = new Weigher(model, questions, likelihoodFor(model, observations), prior);
  const otherValues = new OtherValues(build, weigher, places, checkpoint);
  const listed = singleHypotheses(weigher, faults, checkpoint);
  const singles = heard([...listed, ...otherValues.singles(affordable, listed)]);
  const weighedBefore = weigher.count;
  const pairs = leavesDoubt(singles, commonPair(faults, prior), symptoms.length)
    ? pairsOf(weigher, otherValues, singles, { affordable, heard, checkpoint, hasSymptoms: symptoms.length > 0 })
    : [];
  checkpoint();
  const groups = groupEqual([...singles, ...pairs], (a, b) => weigher.separation(a, b));
  return {
    model,
    plans,
    observations,
    sound: singles.find(({ faults: none }) => none.length === 0)!,
    groups,
    remainder: remainderOf(groups, singles, symptoms.length),
    considered: { singles: faults.length, ofSingles: all.length, pairs: weigher.count - weighedBefore },
  };
}

/** What weighs faults by readings alone, for whoever has other evidence beside them. */
export interface MeterJudge {
  readonly plans: readonly ReadingPlan[];
  readonly observations: readonly Observation[];
  readonly weigher: Weigher;
  /** How many faults can be weighed in about a second. */
  readonly affordable: number;
}

/** @throws PresolderError REQUEST_INVALID or SETTINGS_INVALID naming the field at fault */
export function meterJudge(build: Build, request: DiagnoseRequest): MeterJudge {
  const plans = plansOf(build, request.readings);
  const celsius = request.temperature ?? REFERENCE_CELSIUS;
  const observations = observationsOf(build, request, plans, celsius);
  const model = withSpareJoint(meterModelOf(build, celsius));
  const questions = questionsOf(model, plans);
  return {
    plans,
    observations,
    weigher: new Weigher(model, questions, likelihoodFor(model, observations), () => 0),
    affordable: affordableFaults(model, questions),
  };
}

interface PairSearch {
  readonly affordable: number;
  readonly heard: (weighed: Hypothesis[]) => Hypothesis[];
  readonly checkpoint: () => void;
  readonly hasSymptoms: boolean;
}

function pairsOf(
  weigher: Weigher,
  otherValues: OtherValues,
  singles: readonly Hypothesis[],
  { affordable, heard, checkpoint, hasSymptoms }: PairSearch,
): Hypothesis[] {
  const search = new Pairs(weigher, singles, checkpoint);
  const found = [
    ...search.seen(affordable),
    ...otherValues.beside(search.seeds.slice(0, VALUE_SEEDS), affordable),
    ...(hasSymptoms ? search.heard() : []),
  ];
  return withoutIdle(heard(found), singles);
}

/** ln of the prior probability of a pair of the commonest faults. */
function commonPair(faults: readonly Fault[], prior: (faults: readonly Fault[]) => number): number {
  const common = [...faults].filter(({ edits }) => edits.length > 0).sort((a, b) => prior([b]) - prior([a]));
  return common.length < 2 ? Number.NEGATIVE_INFINITY : prior(common.slice(0, 2));
}
