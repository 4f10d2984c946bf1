import { affordableReadings } from "../../bench/faults/diagnosis-effort.ts";
import { editModel } from "../../bench/faults/edits/edit-model.ts";
import { nextMeasurement, planKey } from "../../bench/faults/next/next-measurement.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Question } from "../question.ts";
import type { Group } from "../weigh/groups.ts";
import type { MeterReadings } from "../weigh/meter-readings.ts";
import type { ToldReading } from "./told-readings.ts";
import { isContradicted, nextFor, type Verdict } from "./verdict.ts";

/** With a meter, so many of what the takes cannot tell apart are looked at. */
const MOST_SUSPECTS = 40;

/** As likely as this to show one thing, a reading decides nothing. */
const FORESEEN = 0.98;

/** The reading that would tell apart what the takes do not; null where none does. */
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
  const whole = suspects.reduce((sum, { share }) => sum + share, 0);
  const next = nextMeasurement(
    build,
    weigher.sound,
    suspects,
    taken,
    affordableReadings(weigher.sound),
    question.meter,
  );
  return next?.outcomes.every(({ share }) => share < FORESEEN * whole) ? next : null;
}

/** What is said where neither takes nor the meter go any further. */
const NOTHING_FURTHER =
  "Neither a further take at the jack nor a meter would tell these apart: look at the places themselves, the likeliest first.";

/** What there is to do next, and what the best answer is done about. */
export function nextWords(
  verdict: Verdict,
  groups: readonly Group[],
  take: string | undefined,
  meter: string | undefined,
  contradictions: readonly ToldReading[] = [],
): string {
  const [odd] = contradictions;
  if (verdict === "unexplained" && odd && isContradicted(groups[0]!))
    return `Short the meter's probes and read ${odd.title} again; then make the take with ${odd.against[0] ?? "that setting"} again. One of both is wrong.`;
  if (verdict === "departs" && groups[0]!.names.length === 1) return nextFor(groups[0]!);
  if (verdict === "as-drawn") return nextFor(groups[0]!);
  if (verdict === "unexplained")
    return "Measure the known resistor with a meter; then make the takes again that do not agree, with every control where you say it is.";
  return take ?? meter ?? `${NOTHING_FURTHER} ${nextFor(groups[0]!)}`;
}
