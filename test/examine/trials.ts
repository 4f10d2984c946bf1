import type { Edit } from "../../src/bench/faults/edits/edit.ts";
import type { Fault } from "../../src/bench/faults/fault.ts";
import type { Build } from "../../src/build-file/schema.ts";
import type { Settings } from "../../src/build-file/settings.ts";
import { NO_CHECKPOINT } from "../../src/checkpoint.ts";
import { verdictOf } from "../../src/examine/answer/verdict.ts";
import { type Departure, NOTHING } from "../../src/examine/departures/departure.ts";
import { departuresOf } from "../../src/examine/departures/departures.ts";
import { pairOf } from "../../src/examine/departures/pair.ts";
import { Point } from "../../src/examine/model/point.ts";
import { RIG } from "../../src/examine/model/rig-unknowns.ts";
import { planFor, USUAL_RIG } from "../../src/examine/plan/plan.ts";
import { type Take, usedFrequencies } from "../../src/examine/takes/take.ts";
import { weighingOf } from "../../src/examine/weigh/evidence-of.ts";
import { type Group, groupsOf } from "../../src/examine/weigh/groups.ts";
import { search } from "../../src/examine/weigh/search.ts";
import type { Weighed } from "../../src/examine/weigh/weighed.ts";
import type { Weigher } from "../../src/examine/weigh/weigher.ts";
import { TONES_HZ } from "../../src/measure/signal/multitone.ts";
import { hiddenIn, nameOf, pairIn, type Truth, withPatched } from "./hidden-departures.ts";
import { benchOf, type Random, sharesOf, soldered } from "./simulated-guard.ts";
import { trialGuards } from "./trial-guards.ts";

const FREQUENCIES_HZ = Float64Array.from(usedFrequencies(TONES_HZ), (index) => TONES_HZ[index]!);
/** Takes, of the plan where no settings are given, of a guard soldered of parts as they come. */
export function takesOf(
  build: Build,
  edits: readonly Edit[],
  random: Random,
  settings: readonly Settings[] = planFor(build).map((each) => each.settings),
  resistorFactor = 1,
): Take[] {
  const guard = soldered(build, edits, random);
  const bench = benchOf(resistorFactor * USUAL_RIG.resistorOhms, random);
  return settings.map((each) => ({
    settings: each,
    through: "jack",
    frequenciesHz: FREQUENCIES_HZ,
    hasReference: true,
    ...sharesOf(guard, each, FREQUENCIES_HZ, bench, random),
  }));
}

export interface Outcome {
  readonly groups: readonly Group[];
  /** Of the group that names the truth, from 1; 0 for none. */
  readonly rank: number;
  /** Whether no take can show it at all, or one of two. */
  readonly isUnseen: boolean;
  /** Of two departures: whether the first answer accounts for the takes as well as the truth does. */
  readonly isAsGood: boolean;
}

/** Told apart by takes, as chi-square. */
const TELLING = 30;

/** Nothing to speak of, in nats. */
const NO_WORSE = 3;

/** Departures where the truths have their values, all else as drawn. */
function placed(weigher: Weigher, truths: readonly Truth[]): (departure: Departure) => Weighed {
  return (departure) => {
    const unknowns = weigher.unknowns.with(departure.added);
    const values = new Float64Array(unknowns.all.length);
    for (const { patches = [], resistorFactor = 1 } of truths) {
      for (const { part, field, factor } of patches) values[unknowns.indexOf(part, field)] = Math.log(factor);
      values[unknowns.indexOf(RIG, "resistor")]! += Math.log(resistorFactor);
    }
    // What is another part's value alone.
    for (const { part, field } of freedOf(truths))
      if (!departure.freed.some((each) => each.part === part && each.field === field))
        values[unknowns.indexOf(part, field)] = 0;
    return { departure, point: new Point(unknowns, values), fit: {} as Weighed["fit"] };
  };
}

/** Whether one of two departures shows nothing beside the other, of parts as drawn; and how well both account for the takes. */
function judgedPair(build: Build, weigher: Weigher, truths: readonly Truth[]): { isHidden: boolean; log: number } {
  const [one, other] = truths.map(({ departure }) => departure) as [Departure, Departure];
  const at = placed(weigher, truths);
  const both = at(pairOf(build, [one], [other])!);
  const isHidden = [one, other].some((each) => weigher.apart(at(each), both) < TELLING);
  return { isHidden, log: isHidden ? Number.NEGATIVE_INFINITY : weigher.refined(both).fit.log };
}

const freedOf = (truths: readonly Truth[]) => truths.flatMap(({ departure }) => departure.freed);

/** Examines a guard with these departures, or sound, by the takes of its plan. */
export function examined(build: Build, truths: readonly Truth[], random: Random): Outcome {
  const settings = planFor(build).map((each) => each.settings);
  const patched = truths.reduce(withPatched, build);
  const edits = truths.flatMap((truth) => truth.edits);
  const resistorFactor = truths.reduce((product, truth) => product * (truth.resistorFactor ?? 1), 1);
  const takes = takesOf(patched, edits, random, settings, resistorFactor);
  const { weigher } = weighingOf(build, { takes, rig: USUAL_RIG });
  const departures = departuresOf(build, NO_CHECKPOINT, USUAL_RIG);
  const { candidates, slight } = search(build, weigher, departures, undefined, NO_CHECKPOINT);
  const groups = groupsOf(weigher, candidates, slight);
  const isNamed = (faults: readonly Fault[]) =>
    faults.length === truths.length &&
    truths.every(({ names }) => faults.some((fault) => names.includes(nameOf(fault))));
  const holds = ({ names, isSound }: Group) =>
    truths.length > 0 ? names.some(({ faults }) => isNamed(faults)) : isSound;
  const key = (departure: Departure) => weigher.keyOf(departure);
  const pair = truths.length === 2 ? judgedPair(build, weigher, truths) : undefined;
  const isUnseen = pair?.isHidden || truths.some(({ departure }) => key(departure) === key(NOTHING));
  const isAsGood = pair !== undefined && groups[0]!.leader.weighed.fit.log > pair.log - NO_WORSE;
  return { groups, rank: groups.findIndex(holds) + 1, isUnseen, isAsGood };
}

export interface Tally {
  faulty: number;
  first: number;
  firstThree: number;
  /** In first place beside the guard as drawn: the takes cannot tell them apart. */
  likeDrawn: number;
  unseen: number;
  sound: number;
  asDrawn: number;
  readonly missed: string[];
}

const told = ({ share, names, isSound }: Group) =>
  `${share.toFixed(2)} ${isSound ? "as drawn" : names[0]!.faults.map(nameOf).join()}`;

/** Guards in turn, each with one departure, and every `soundEvery`th sound. */
export function trials(count: number, soundEvery: number, random: Random): Tally {
  const tally: Tally = {
    faulty: 0,
    first: 0,
    firstThree: 0,
    likeDrawn: 0,
    unseen: 0,
    sound: 0,
    asDrawn: 0,
    missed: [],
  };
  for (let trial = 0; trial < count; trial++) {
    const { name, build } = trialGuards[trial % trialGuards.length]!;
    const truth = trial % soundEvery === soundEvery - 1 ? undefined : hiddenIn(build, random);
    const { groups, rank, isUnseen } = examined(build, truth ? [truth] : [], random);
    const best = groups[0]!;
    const isMissed = truth ? rank !== 1 && !isUnseen : verdictOf(groups) !== "as-drawn";
    if (isMissed)
      tally.missed.push(`${trial} ${name}: ${truth?.names[0] ?? "sound"}, ${groups.slice(0, 3).map(told).join("; ")}`);
    if (!truth) {
      tally.sound++;
      if (!isMissed) tally.asDrawn++;
    } else if (isUnseen) tally.unseen++;
    else {
      tally.faulty++;
      if (rank === 1) tally.first++;
      if (rank === 1 && best.isSound) tally.likeDrawn++;
      if (rank >= 1 && rank <= 3) tally.firstThree++;
    }
  }
  return tally;
}

/** How two departures at once are told; those of which one shows in no take are left out. */
export interface PairTally {
  shown: number;
  first: number;
  firstThree: number;
  /** First another answer, which accounts for the takes as well as the truth does: they do not tell both apart. */
  asGood: number;
  /** First one with one of both, of those that are left. */
  oneFirst: number;
  readonly missed: string[];
}

/** Guards in turn, each with two departures at once. */
export function pairTrials(count: number, random: Random): PairTally {
  const tally: PairTally = { shown: 0, first: 0, firstThree: 0, asGood: 0, oneFirst: 0, missed: [] };
  for (let trial = 0; trial < count; trial++) {
    const { name, build } = trialGuards[trial % trialGuards.length]!;
    const truths = pairIn(build, random);
    const { groups, rank, isUnseen, isAsGood } = examined(build, truths, random);
    if (isUnseen) continue;
    tally.shown++;
    if (rank === 1) tally.first++;
    if (rank >= 1 && rank <= 3) tally.firstThree++;
    const isOne = groups[0]!.names.some(({ faults }) =>
      faults.some((fault) => truths.some(({ names }) => names.includes(nameOf(fault)))),
    );
    if (rank === 1) continue;
    if (isAsGood) tally.asGood++;
    else if (isOne) tally.oneFirst++;
    if (!isAsGood)
      tally.missed.push(
        `${trial} ${name}: ${truths.map(({ names }) => names[0]).join(" + ")}, ${groups.slice(0, 3).map(told).join("; ")}`,
      );
  }
  return tally;
}
