import { alternative } from "../bench/faults/answer/explanations.ts";
import { PRIORS_SOURCE } from "../bench/faults/priors/fault-shares.ts";
import type { Build } from "../build-file/schema.ts";
import { Controls, rawSettings } from "../build-file/settings.ts";
import type { Checkpoint } from "../checkpoint.ts";
import { nextWithMeter, nextWords } from "./answer/next-step.ts";
import { notesOn, weighedNotes } from "./answer/notes.ts";
import { rigDoubt } from "./answer/rig-doubt.ts";
import { sortsOf } from "./answer/sorts.ts";
import { summaryFor } from "./answer/summary.ts";
import { takeColumns } from "./answer/take-columns.ts";
import { departureOf, toldOf } from "./answer/told-departures.ts";
import { partsTold } from "./answer/told-parts.ts";
import { toldReadings } from "./answer/told-readings.ts";
import { asDrawnSoFar, outsideOf, verdictOf, verdictTitle } from "./answer/verdict.ts";
import { worstTake } from "./answer/worst-take.ts";
import { NOTHING } from "./departures/departure.ts";
import { departuresOf } from "./departures/departures.ts";
import { affordableDepartures, EXAMINE_BUDGET, weighingCost } from "./effort.ts";
import { withinTolerance } from "./model/within-tolerance.ts";
import { leftOfPlan, nextTake } from "./plan/next-take.ts";
import { planNotes, planOf } from "./plan/plan.ts";
import { EXAMINE_CAUTIONS, plannedTake } from "./plan/planned-words.ts";
import { showers } from "./plan/shown-by.ts";
import type { Question } from "./question.ts";
import { takeTitle } from "./takes/take-title.ts";
import { weighingOf } from "./weigh/evidence-of.ts";
import { FLOOR, FLOOR_SOURCE } from "./weigh/floor.ts";
import { type Group, groupsOf } from "./weigh/groups.ts";
import { foretoldBy, judgedByMeter } from "./weigh/judged-by-meter.ts";
import { MeterReadings } from "./weigh/meter-readings.ts";
import { search } from "./weigh/search.ts";

/**
 * A finished guard held to its drawing.
 * @throws PresolderError REQUEST_INVALID or SETTINGS_INVALID naming the field at fault
 */
export function examine(build: Build, question: Question, { checkpoint }: Checkpoint) {
  const { weigher, unknowns, ofTakes } = weighingOf(build, question);
  const meter = new MeterReadings(build, question);
  const hasJack = question.takes.some(({ through }) => through === "jack");
  const all = departuresOf(build, { checkpoint }, hasJack ? question.rig : undefined);
  const departures = affordableDepartures(build, all, question.takes.length, meter.most);
  const most = EXAMINE_BUDGET / weighingCost(build, question.takes.length);
  const found = search(
    build,
    weigher,
    departures,
    question.joints,
    { checkpoint },
    (faults) => meter.log(faults),
    most,
  );
  const ranked = groupsOf(weigher, found.candidates, found.slight);
  const groups = judgedByMeter(meter, ranked);
  const [first] = groups as [Group, ...Group[]];
  const verdict = verdictOf(groups);
  // Otherwise its parts are held to be other parts, wherever that accounts for the takes.
  const drawnAt = first.isSound ? found.sound.point : withinTolerance(found.sound.point);
  const drawn = weigher.subjectAt(NOTHING, drawnAt);
  const { departure, point } = first.leader.weighed;
  const best = first.isSound ? drawn : weigher.subjectAt(departure, point);
  const controls = new Controls(build);
  const takes = question.takes.map((take, index) => ({
    settings: rawSettings(controls, take.settings),
    through: take.through,
    title: takeTitle(build, take),
    ...takeColumns(take, ofTakes[index]!, drawn, best),
  }));
  const readings = toldReadings(build, meter, foretoldBy(meter, first), question.takes);
  const odd = readings.filter(({ agrees }) => !agrees);
  const contradictions = odd.map(({ message }) => message);
  const told = toldOf(groups);
  const plan = planOf(build, { checkpoint });
  const left = leftOfPlan(plan.takes, question.takes);
  const planned =
    verdict === "as-drawn" ? left[0] : nextTake(build, plan.takes, unknowns, question.takes, groups, checkpoint);
  const next = planned && plannedTake(build, planned);
  const measurement = verdict === "as-drawn" || next ? null : nextWithMeter(build, meter, told, question);
  const shownBy = showers(build, unknowns, question.takes, left, checkpoint);
  const notShown = found.unseen;
  return {
    kind: "examined" as const,
    verdict,
    title: verdictTitle(build, verdict, first),
    summary: summaryFor(verdict, groups, worstTake(takes), contradictions),
    next: [
      (verdict === "as-drawn" ? undefined : rigDoubt(question.takes)) ?? [],
      verdict === "as-drawn" && left.length > 0
        ? asDrawnSoFar(left.length)
        : nextWords(verdict, groups, next?.instruction, measurement?.instruction, odd),
    ]
      .flat()
      .join(" "),
    departures: told.map((group) => departureOf(build, group, first, shownBy)),
    remainder: {
      probability: outsideOf(first),
      message: "Left for what was not weighed: three departures at once, or one of a kind that is not among these.",
    },
    notShown: notShown.map(alternative),
    notShownSorts: sortsOf(notShown, shownBy),
    takes,
    readings,
    contradictions,
    ...partsTold(build, weigher, first.leader.weighed),
    considered: found.considered,
    nextTake: next ?? null,
    nextMeasurement: measurement,
    floor: { fraction: FLOOR, source: FLOOR_SOURCE },
    priors: PRIORS_SOURCE,
    notes: [...notesOn(question), ...planNotes(plan), ...weighedNotes(departures.length, all.length)],
    cautions: EXAMINE_CAUTIONS,
  };
}

export type Examined = ReturnType<typeof examine>;
