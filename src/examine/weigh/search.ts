import type { Fault } from "../../bench/faults/fault.ts";
import { createPrior, type FaultCounts } from "../../bench/faults/hypotheses/prior.ts";
import type { FaultKind, JointAge } from "../../bench/faults/priors/fault-shares.ts";
import type { Checkpoint } from "../../checkpoint.ts";
import { type Departure, NOTHING } from "../departures/departure.ts";
import { FIRST_FLOOR, NARROWED_FLOOR } from "./floor.ts";
import type { Weighed, Weigher } from "./weigher.ts";

/** A fault, or none, and how likely it is before anything was recorded. */
export interface Named {
  readonly faults: readonly Fault[];
  readonly logPrior: number;
}

/** Departures that nothing given tells apart, weighed as one. */
export interface Candidate {
  readonly weighed: Weighed;
  /** The commonest first. */
  readonly names: readonly Named[];
  /** ln of its weight beside the others. */
  readonly score: number;
  readonly logLikelihood: number;
}

/** How many go on from each look to the next. */
const LOOKED_TWICE = 60;
const LOOKED_CLOSELY = 20;
const NARROWING_ROUNDS = 5;
/** Of the best, so many begin again from where the very best has its parts. */
const TRIED_AGAIN = 6;
/** Further behind the best than this, in nats, none is gone on with. */
const HOPELESS = 40;

/** What each departure would be called at any value of its own. */
function anyName({ freed, added, faults }: Departure): readonly Fault[] {
  const asked = Math.max(1, freed.length, added.length);
  return faults(Array.from({ length: asked }, () => 3));
}

function countsOf(departures: readonly Departure[]): FaultCounts {
  const counts: Partial<Record<FaultKind, number>> = {};
  for (const { kind } of departures.flatMap(anyName)) counts[kind] = (counts[kind] ?? 0) + 1;
  return counts;
}

const logSum = (logs: readonly number[]) => {
  const top = Math.max(...logs);
  return top + Math.log(logs.reduce((sum, each) => sum + Math.exp(each - top), 0));
};

/** Departures by what tells them apart, each class with one of them to weigh. */
interface Class {
  readonly members: Departure[];
  readonly logPrior: number;
}

function classesOf(weigher: Weigher, departures: readonly Departure[], logPrior: (each: Departure) => number): Class[] {
  const byKey = new Map<string, Departure[]>();
  for (const departure of departures) {
    const key = weigher.keyOf(departure);
    const found = byKey.get(key);
    if (found) found.push(departure);
    else byKey.set(key, [departure]);
  }
  return [...byKey.values()].map((members) => ({ members, logPrior: logSum(members.map(logPrior)) }));
}

interface Look {
  readonly cls: Class;
  readonly weighed: Weighed;
}

/** A guard that fits no better than this, chi-square over degrees, may have been led astray by where it began. */
const POOR_FIT = 0.4;

/** Under ever lower floors: what is far off is brought near first. */
function annealed(weigher: Weigher, from: Weighed): Weighed {
  const near = [FIRST_FLOOR, NARROWED_FLOOR].reduce((at, floor) => weigher.refined(at, { floor }), from);
  return weigher.refined(near);
}

/** The better of it as it is and of where another guard's parts are likeliest. */
function fromThere(weigher: Weigher, weighed: Weighed, there: Weighed): Weighed {
  const again = weigher.refined(weigher.movedTo(weighed, there.point));
  return again.fit.log > weighed.fit.log ? again : weighed;
}

function refinedFully(weigher: Weigher, from: Weighed, hopeless: number): Weighed {
  const refined = weigher.refined(from, { hopeless });
  if (refined.fit.chiSquare < POOR_FIT * refined.fit.degrees) return refined;
  const again = weigher.refined(weigher.fromDrawing(from), { hopeless });
  return again.fit.log > refined.fit.log ? again : refined;
}

export interface Search {
  /** The likeliest first; the guard as drawn is always among them. */
  readonly candidates: readonly Candidate[];
  /** What shows in nothing that was given. */
  readonly unseen: readonly Named[];
  readonly considered: number;
  /** The guard as drawn. */
  readonly sound: Weighed;
}

/** Weighs every departure: all at a first look, the better ones again at their own likeliest parts. */
export function search(
  weigher: Weigher,
  departures: readonly Departure[],
  joints: JointAge | undefined,
  { checkpoint }: Checkpoint,
  logBesides: (faults: readonly Fault[]) => number = () => 0,
): Search {
  const all = [NOTHING, ...departures];
  const prior = createPrior(countsOf(departures), { isComplainedOf: false, joints });
  const priorOf = (each: Departure) => logSum(anyNames(each).map((faults) => prior(faults)));
  const classes = classesOf(weigher, all, priorOf);
  checkpoint();
  const sound = annealed(weigher, weigher.firstLook(NOTHING));
  const ordered = (looks: readonly Look[]) =>
    [...looks].sort((a, b) => b.weighed.fit.log + b.cls.logPrior - a.weighed.fit.log - a.cls.logPrior);
  const isSound = (cls: Class) => cls.members[0] === NOTHING;
  const first = classes.map((cls) => {
    checkpoint();
    return { cls, weighed: weigher.firstLook(cls.members[0]!, sound.point) };
  });
  let leading = Number.NEGATIVE_INFINITY;
  const second = ordered(first)
    .slice(0, LOOKED_TWICE)
    .filter(({ cls }) => !isSound(cls))
    .map(({ cls, weighed }) => {
      checkpoint();
      const options = {
        rounds: NARROWING_ROUNDS,
        floor: NARROWED_FLOOR,
        hopeless: leading - cls.logPrior - 2 * HOPELESS,
      };
      const narrowed = weigher.refined(weighed, options);
      leading = Math.max(leading, narrowed.fit.log + cls.logPrior);
      return { cls, weighed: narrowed };
    });
  let best = sound.fit.log + prior([]);
  const close = ordered(second)
    .slice(0, LOOKED_CLOSELY)
    .map(({ cls, weighed }) => {
      checkpoint();
      const refined = refinedFully(weigher, weighed, best - cls.logPrior - HOPELESS);
      best = Math.max(best, refined.fit.log + cls.logPrior);
      return { cls, weighed: refined };
    });
  const soundClass = classes.find(isSound)!;
  const refined = ordered([{ cls: soundClass, weighed: sound }, ...close]);
  const leader = refined[0]!;
  const final = refined.map(({ cls, weighed }, index) => {
    checkpoint();
    const isClose = weighed.fit.log + cls.logPrior > leader.weighed.fit.log + leader.cls.logPrior - HOPELESS;
    const again = index > 0 && (isSound(cls) || (index < TRIED_AGAIN && isClose));
    return { cls, weighed: again ? fromThere(weigher, weighed, leader.weighed) : weighed };
  });
  const candidates = final.flatMap(({ cls, weighed }) => candidatesOf(weigher, cls, weighed, prior, logBesides));
  return {
    candidates: candidates.sort((a, b) => b.score - a.score),
    unseen: soundClass.members
      .slice(1)
      .flatMap((each) => anyName(each).map((fault) => ({ faults: [fault], logPrior: prior([fault]) }))),
    considered: departures.length,
    sound: final.find(({ cls }) => isSound(cls))!.weighed,
  };
}

function anyNames(departure: Departure): (readonly Fault[])[] {
  const names = anyName(departure);
  return names.length === 0 ? [[]] : names.map((fault) => [fault]);
}

/** Names of a class that other evidence speaks alike for, in nats, stay together. */
const SAME_BESIDES = 1;

function candidatesOf(
  weigher: Weigher,
  { members }: Class,
  weighed: Weighed,
  prior: (faults: readonly Fault[]) => number,
  logBesides: (faults: readonly Fault[]) => number,
): Candidate[] {
  const factors = weigher.factorsOf(weighed);
  const names = members.flatMap((member): readonly Fault[][] =>
    member === NOTHING ? [[]] : member.faults(factors).map((fault) => [fault]),
  );
  const told = names.map((faults) => ({ faults, logPrior: prior(faults), besides: logBesides(faults) }));
  const clusters: (typeof told)[] = [];
  for (const each of told.sort((a, b) => b.besides - a.besides)) {
    const found = clusters.find(([first]) => first!.besides - each.besides < SAME_BESIDES);
    if (found) found.push(each);
    else clusters.push([each]);
  }
  return clusters.map((cluster) => {
    const logLikelihood = weighed.fit.log + cluster[0]!.besides;
    const ordered = [...cluster].sort((a, b) => b.logPrior - a.logPrior);
    const score = weighed.fit.log + logSum(cluster.map(({ logPrior, besides }) => logPrior + besides));
    return { weighed, names: ordered.map(({ faults, logPrior }) => ({ faults, logPrior })), score, logLikelihood };
  });
}
