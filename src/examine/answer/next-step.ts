import { affordableReadings } from "../../bench/faults/diagnosis-effort.ts";
import { editModel } from "../../bench/faults/edits/edit-model.ts";
import { nextMeasurement, planKey } from "../../bench/faults/next/next-measurement.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Question } from "../question.ts";
import type { Group } from "../weigh/groups.ts";
import type { MeterReadings } from "../weigh/meter-readings.ts";
import { nextFor, type Verdict } from "./verdict.ts";

/** With a meter, so many of what the takes cannot tell apart are looked at. */
const MOST_SUSPECTS = 40;

/** The reading that would tell apart what the takes do not. */
export function nextWithMeter(build: Build, meter: MeterReadings, groups: readonly Group[], question: Question) {
  const { weigher, plans } = meter.judge;
  const named = groups.flatMap((group) => group.names.map(({ faults, logPrior }) => ({ faults, group, logPrior })));
  const suspects = named.slice(0, MOST_SUSPECTS).map(({ faults, group, logPrior }) => {
    const edits = faults.flatMap((fault) => fault.edits);
    const whole = group.names.reduce((sum, each) => sum + Math.exp(each.logPrior), 0);
    return {
      hypothesis: { faults, model: editModel(weigher.sound, edits) },
      share: (group.share * Math.exp(logPrior)) / whole,
    };
  });
  const taken = new Set(plans.map(planKey));
  return nextMeasurement(build, weigher.sound, suspects, taken, affordableReadings(weigher.sound), question.meter);
}

/** What there is to do next, and what the best answer is done about. */
export function nextWords(
  verdict: Verdict,
  groups: readonly Group[],
  take: string | undefined,
  meter: string | undefined,
): string {
  if (verdict === "departs" && groups[0]!.names.length === 1) return nextFor(groups[0]!);
  if (verdict === "as-drawn") return nextFor(groups[0]!);
  if (verdict === "unexplained")
    return "Measure the known resistor with a meter; then make the takes again that do not agree, with every control where you say it is.";
  return take ?? meter ?? nextFor(groups[0]!);
}
