import { alternative, kindsIn } from "../bench/faults/answer/explanations.ts";
import { affordableReadings } from "../bench/faults/diagnosis-effort.ts";
import { editModel } from "../bench/faults/edits/edit-model.ts";
import { nextMeasurement, planKey } from "../bench/faults/next/next-measurement.ts";
import { PRIORS_SOURCE } from "../bench/faults/priors/fault-shares.ts";
import type { Build } from "../build-file/schema.ts";
import { Controls, rawSettings } from "../build-file/settings.ts";
import type { Checkpoint } from "../checkpoint.ts";
import { takeColumns } from "./answer/take-columns.ts";
import { partsTold } from "./answer/told-parts.ts";
import {
  asDrawnSoFar,
  fitOf,
  nextFor,
  outsideOf,
  probabilityOf,
  summaryFor,
  titleFor,
  type Verdict,
  verdictOf,
  verdictTitle,
} from "./answer/verdict.ts";
import { worstTake } from "./answer/worst-take.ts";
import { NOTHING } from "./departures/departure.ts";
import { departuresOf } from "./departures/departures.ts";
import { affordableDepartures, EXAMINE_BUDGET, weighingCost } from "./effort.ts";
import { leftOfPlan, nextTake } from "./plan/next-take.ts";
import { planNotes, planOf } from "./plan/plan.ts";
import { EXAMINE_CAUTIONS, plannedTake } from "./plan/planned-words.ts";
import type { Question } from "./question.ts";
import { takeTitle } from "./takes/take-title.ts";
import type { Named } from "./weigh/candidates.ts";
import { weighingOf } from "./weigh/evidence-of.ts";
import { FLOOR, FLOOR_SOURCE } from "./weigh/floor.ts";
import { type Group, groupsOf } from "./weigh/groups.ts";
import { MeterReadings } from "./weigh/meter-readings.ts";
import { search } from "./weigh/search.ts";

const MOST_TOLD = 8;
const LEAST_SHARE = 1e-4;
const MOST_ALIKE = 40;
/** With a meter, so many of what the takes cannot tell apart are looked at. */
const MOST_SUSPECTS = 40;

/** The guard as drawn first where it is among a group's names. */
function namesOf({ names, isSound }: Group): readonly Named[] {
  return isSound ? [...names].sort((a, b) => a.faults.length - b.faults.length) : names;
}

function departureOf(group: Group, best: Group) {
  const [first, ...others] = namesOf(group);
  return {
    ...alternative(first!),
    title: titleFor(group),
    next: nextFor(group),
    probability: probabilityOf(group, best),
    fit: fitOf(group),
    sameAs: others.slice(0, MOST_ALIKE).map(alternative),
    alike: kindsIn(others),
  };
}

function nextWithMeter(build: Build, meter: MeterReadings, groups: readonly Group[], question: Question) {
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
function nextWords(
  verdict: Verdict,
  groups: readonly Group[],
  take: string | undefined,
  meter: string | undefined,
): string {
  if (verdict === "departs" && groups[0]!.names.length === 1) return nextFor(groups[0]!);
  if (verdict === "as-drawn") return nextFor(groups[0]!);
  if (verdict === "unexplained")
    return "Make the takes again that do not agree, with every control where you say it is.";
  return take ?? meter ?? nextFor(groups[0]!);
}

/**
 * A finished guard held to its drawing.
 * @throws PresolderError REQUEST_INVALID or SETTINGS_INVALID naming the field at fault
 */
export function examine(build: Build, question: Question, { checkpoint }: Checkpoint) {
  const { weigher, unknowns, ofTakes } = weighingOf(build, question);
  const meter = new MeterReadings(build, question);
  const all = departuresOf(build, { checkpoint });
  const departures = affordableDepartures(build, all, question.takes.length, meter.most);
  const most = EXAMINE_BUDGET / weighingCost(build, question.takes.length);
  const found = search(weigher, departures, question.joints, { checkpoint }, (faults) => meter.log(faults), most);
  const groups = groupsOf(weigher, found.candidates, found.slight);
  const verdict = verdictOf(groups);
  const drawn = weigher.subjectAt(NOTHING, found.sound.point);
  const { departure, point } = groups[0]!.leader.weighed;
  const best = groups[0]!.isSound ? drawn : weigher.subjectAt(departure, point);
  const controls = new Controls(build);
  const takes = question.takes.map((take, index) => ({
    settings: rawSettings(controls, take.settings),
    through: take.through,
    title: takeTitle(build, take),
    ...takeColumns(take, ofTakes[index]!, drawn, best),
  }));
  const told = groups.filter(({ share }, index) => index < 3 || (index < MOST_TOLD && share > LEAST_SHARE));
  const plan = planOf(build, { checkpoint });
  const left = leftOfPlan(plan.takes, question.takes);
  const planned =
    verdict === "as-drawn" ? left[0] : nextTake(build, plan.takes, unknowns, question.takes, groups, checkpoint);
  const next = planned && plannedTake(build, planned);
  const measurement = verdict === "as-drawn" || next ? null : nextWithMeter(build, meter, told, question);
  return {
    kind: "examined" as const,
    verdict,
    title: verdictTitle(verdict, groups[0]!),
    summary: summaryFor(verdict, groups, worstTake(takes)),
    next:
      verdict === "as-drawn" && left.length > 0
        ? asDrawnSoFar(left.length)
        : nextWords(verdict, groups, next?.instruction, measurement?.instruction),
    departures: told.map((group) => departureOf(group, groups[0]!)),
    remainder: {
      probability: outsideOf(groups[0]!),
      message: "Left for what was not weighed: two departures at once, or one of a kind that is not among these.",
    },
    notShown: found.unseen.map(alternative),
    takes,
    ...partsTold(build, weigher, groups[0]!.leader.weighed),
    considered: found.considered,
    nextTake: next ?? null,
    nextMeasurement: measurement,
    floor: { fraction: FLOOR, source: FLOOR_SOURCE },
    priors: PRIORS_SOURCE,
    notes: [
      ...notesOn(question),
      ...planNotes(plan),
      ...(departures.length < all.length
        ? [`The guard is large: of ${all.length} departures the ${departures.length} commonest were weighed.`]
        : []),
    ],
    cautions: EXAMINE_CAUTIONS,
  };
}

export type Examined = ReturnType<typeof examine>;

function notesOn({ takes, rig }: Question): string[] {
  const hasExciter = takes.some(({ through }) => through !== "jack");
  return [
    ...(hasExciter
      ? [
          "An exciter shows which way a coil is wound and joined, not which pole of its magnet is up: a compass shows that.",
        ]
      : [
          "At the jack alone a single coil is the same with its leads exchanged: a small coil laid over each pickup shows which way it is joined.",
        ]),
    ...(rig.isGainKnown
      ? []
      : ["Without a run of both channels on one point their gains are only known to a few per cent."]),
  ];
}
