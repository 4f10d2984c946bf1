import type { Build } from "../../build-file/schema.ts";
import type { OwnMeter } from "../meter/own/own-meter.ts";
import { affordableListenings } from "../solving-effort.ts";
import { type Explanation, explanationsOf } from "./answer/explanations.ts";
import { type RemainderAnswer, remainderAnswer } from "./answer/remainder-words.ts";
import { summaryOf } from "./answer/summary.ts";
import { NOTHING_MEASURED, unexplained } from "./answer/unexplained.ts";
import { type DiagnoseRequest, noteOn } from "./diagnose-request.ts";
import { affordableReadings } from "./diagnosis-effort.ts";
import { tenable } from "./hypotheses/groups.ts";
import { type Considered, type Judgement, judge } from "./judge.ts";
import type { NextCheck } from "./next/next-check.ts";
import { nextListening } from "./next/next-listening.ts";
import { nextMeasurement, planKey } from "./next/next-measurement.ts";
import { nextTrial } from "./next/next-trial.ts";
import { type Suspect, suspectsOf } from "./next/suspects.ts";
import { PRIORS_SOURCE } from "./priors/fault-shares.ts";

export interface Diagnosis {
  readonly considered: Considered;
  /** What it most likely is and why, and what to do next; lugs by their codes. */
  readonly summary: string;
  /** Those that account for every reading first, the likelier before the others. */
  readonly explanations: readonly Explanation[];
  /** How likely it is none of these alone. */
  readonly remainder: RemainderAnswer;
  /** Where the explanations' prior probabilities come from. */
  readonly priors: string;
  /** What was taken otherwise than it was written. */
  readonly notes: readonly string[];
  /** By hand where that is most of the belief; with a meter where that tells the leading explanations apart, else by ear. */
  readonly nextMeasurement: NextCheck | null;
}

function explanationsFor({ plans, observations, groups, remainder }: Judgement, isSilent: boolean): Explanation[] {
  if (isSilent) return [NOTHING_MEASURED];
  const explanations = explanationsOf(groups, remainder);
  const [best] = groups;
  return best?.members[0]?.explains ? explanations : [unexplained(plans, observations, groups), ...explanations];
}

/** A remedy that so much of the belief calls for is tried first; a tenth as much where nothing else tells anything. */
const WORTH_TRYING = 0.3;
const LAST_RESORT = 0.03;

function nextCheck(
  build: Build,
  { model, plans }: Judgement,
  suspects: readonly Suspect[],
  meter: OwnMeter | undefined,
): NextCheck | null {
  const taken = new Set(plans.map(planKey));
  return (
    nextTrial(suspects, WORTH_TRYING) ??
    nextMeasurement(build, model, suspects, taken, affordableReadings(model), meter) ??
    nextListening(build, model, suspects, affordableListenings(build)) ??
    nextTrial(suspects, LAST_RESORT)
  );
}

/**
 * Ranks what may be wrong with a guard: first what accounts for every reading, the likelier before the others. Where nothing
 * does, an explanation of kind "unexplained" comes first and says which readings to take again.
 * @param checkpoint called now and then; may throw to stop the work
 * @throws PresolderError REQUEST_INVALID or SETTINGS_INVALID naming the field at fault
 */
export function diagnose(build: Build, request: DiagnoseRequest, checkpoint: () => void = () => {}): Diagnosis {
  const judgement = judge(build, request, checkpoint);
  const { plans, groups, remainder, considered } = judgement;
  const next = nextCheck(build, judgement, suspectsOf(tenable(groups)), request.meter);
  const isSilent = plans.length === 0 && (request.symptoms ?? []).length === 0;
  const explanations = explanationsFor(judgement, isSilent);
  return {
    considered,
    summary: summaryOf(judgement, explanations[0]!, next),
    explanations,
    remainder: remainderAnswer(remainder),
    priors: PRIORS_SOURCE,
    notes: request.readings.flatMap((reading, index) => noteOn(reading, plans[index]!, request.meter)),
    nextMeasurement: next,
  };
}
