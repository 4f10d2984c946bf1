import type { Build } from "../../build-file/schema.ts";
import { affordableListenings } from "../solving-effort.ts";
import { type Explanation, explanationsOf } from "./answer/explanations.ts";
import { NOTHING_MEASURED, unexplained } from "./answer/unexplained.ts";
import { type DiagnoseRequest, noteOn } from "./diagnose-request.ts";
import { affordableReadings } from "./diagnosis-effort.ts";
import { tenable } from "./hypotheses/groups.ts";
import { type Considered, type Judgement, judge } from "./judge.ts";
import { type NextListening, nextListening } from "./next/next-listening.ts";
import { type NextMeasurement, nextMeasurement, planKey } from "./next/next-measurement.ts";
import { suspectsOf } from "./next/suspects.ts";

export interface Diagnosis {
  readonly considered: Considered;
  /** Those that account for every reading first, the likelier before the others. */
  readonly explanations: readonly Explanation[];
  /** What was taken otherwise than it was written. */
  readonly notes: readonly string[];
  /** With a meter where that tells the leading explanations apart, else by ear. */
  readonly nextMeasurement: NextMeasurement | NextListening | null;
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
