import type { JointAge } from "../../bench/faults/priors/fault-shares.ts";
import type { Checkpoint } from "../../checkpoint.ts";
import { type Departure, NOTHING } from "../departures/departure.ts";
import { type Candidate, candidatesOf, type Named } from "./candidates.ts";
import { type Beliefs, type Class, classesOf, isValued, priorOf, unseenName } from "./classes.ts";
import { FIRST_FLOOR, NARROWED_FLOOR } from "./floor.ts";
import type { Weighed, Weigher } from "./weigher.ts";

/** How many go on from each look to the next. */
const LOOKED_TWICE = 40;
const LOOKED_CLOSELY = 12;
const NARROWING_ROUNDS = 4;
/** Of the best, so many begin again from where the very best has its parts. */
const TRIED_AGAIN = 6;
/** Further behind the best than this, in nats, none is gone on with. */
const HOPELESS = 40;
/** A guard that fits no better than this, chi-square over degrees, may have been led astray by where it began. */
const POOR_FIT = 0.4;

/** So many poor joints are too slight to show among tolerances, as ln (common practice, no source). */
const LOG_SLIGHT = Math.log(0.3);
/** Looks that agree so far, in nats, are of networks that are the same to the jack. */
const SAME_AT_FIRST = 1e-3;
/** A usual value this near the one that fits, in ln, may be it. */
const NEAR_VALUE = 0.4;

interface Look {
  readonly cls: Class;
  readonly weighed: Weighed;
}

const scoreOf = ({ cls, weighed }: Look) => cls.log + weighed.fit.log;
const ordered = (looks: readonly Look[]) => [...looks].sort((a, b) => scoreOf(b) - scoreOf(a));
const isSound = ({ cls }: Look) => cls.members[0] === NOTHING;

/** What ends the work, and after how much of it. */
interface Bounds {
  readonly checkpoint: () => void;
  readonly isSpent: (share: number) => boolean;
}

/** Of all that may be weighed, what may be spent up to the end of each stage. */
const SHARES = { first: 0.4, narrowed: 0.75, closely: 1 } as const;

/** Under ever lower floors: what is far off is brought near first. */
function annealed(weigher: Weigher, from: Weighed): Weighed {
  const near = [FIRST_FLOOR, NARROWED_FLOOR].reduce((at, floor) => weigher.refined(at, { floor }), from);
  return weigher.refined(near);
}

function narrowed(weigher: Weigher, looks: readonly Look[], { checkpoint, isSpent }: Bounds): Look[] {
  let leading = Number.NEGATIVE_INFINITY;
  return looks.flatMap(({ cls, weighed }, index) => {
    checkpoint();
    if (index > 0 && isSpent(SHARES.narrowed)) return [];
    const hopeless = leading - cls.log - 2 * HOPELESS;
    const look = {
      cls,
      weighed: weigher.refined(weighed, { rounds: NARROWING_ROUNDS, floor: NARROWED_FLOOR, hopeless }),
    };
    leading = Math.max(leading, scoreOf(look));
    return [look];
  });
}

/** At a departure's own likeliest parts, begun again from the drawing where that did not do. */
function refinedFully(weigher: Weigher, from: Weighed, hopeless: number): Weighed {
  const refined = weigher.refined(from, { hopeless });
  if (refined.fit.chiSquare < POOR_FIT * refined.fit.degrees) return refined;
  const again = weigher.refined(weigher.fromDrawing(from), { hopeless });
  return again.fit.log > refined.fit.log ? again : refined;
}

function closely(weigher: Weigher, looks: readonly Look[], sound: Look, { checkpoint, isSpent }: Bounds): Look[] {
  let best = scoreOf(sound);
  return looks.flatMap(({ cls, weighed }, index) => {
    checkpoint();
    if (index > 0 && isSpent(SHARES.closely)) return [];
    const look = { cls, weighed: refinedFully(weigher, weighed, best - cls.log - HOPELESS) };
    best = Math.max(best, scoreOf(look));
    return [look];
  });
}

/** Where the best has a part of another value, the usual values near that one, begun from there. */
function besideValue(weigher: Weigher, looks: readonly Look[], all: readonly Look[], checkpoint: () => void): Look[] {
  const { weighed: best } = looks[0]!;
  const { freed } = best.departure;
  if (freed.length !== 1) return [];
  const [{ part, field }] = freed as [(typeof freed)[0]];
  const value = best.point.at(part, field);
  const done = new Set(looks.map(({ cls }) => cls));
  return all.flatMap(({ cls }) => {
    const departure = cls.members[0]!;
    const factor = departure.edits.flatMap((edit) => ("factor" in edit && edit.part === part ? [edit.factor] : []))[0];
    if (done.has(cls) || factor === undefined || factor <= 0) return [];
    const left = value - Math.log(factor);
    if (Math.abs(left) > NEAR_VALUE) return [];
    checkpoint();
    return [{ cls, weighed: weigher.refined(weigher.startedAt(departure, best.point, part, field, left)) }];
  });
}

/** Each again from where the best has its parts, where that may bring it nearer. */
function fromTheBest(weigher: Weigher, looks: readonly Look[], checkpoint: () => void): Look[] {
  const [best] = looks;
  return looks.map((look, index) => {
    const isNear = index < TRIED_AGAIN && scoreOf(look) > scoreOf(best!) - HOPELESS;
    if (index === 0 || !(isNear || isSound(look))) return look;
    checkpoint();
    const again = weigher.refined(weigher.movedTo(look.weighed, best!.weighed.point));
    return again.fit.log > look.weighed.fit.log ? { cls: look.cls, weighed: again } : look;
  });
}

export interface Search {
  /** The likeliest first; the guard as drawn is always among them. */
  readonly candidates: readonly Candidate[];
  /** What shows in nothing that was given. */
  readonly unseen: readonly Named[];
  /** What would show if it were more: poor joints that are none to speak of. */
  readonly slight: readonly Named[];
  readonly considered: number;
  /** The guard as drawn. */
  readonly sound: Weighed;
}

/**
 * Weighs every departure: all at a first look, the better ones again at their own likeliest parts.
 * @param readings ln of what a meter's readings say of a fault
 * @param most times that guards may be weighed anew; the likeliest before anything was recorded come first
 */
export function search(
  weigher: Weigher,
  departures: readonly Departure[],
  joints: JointAge | undefined,
  { checkpoint }: Checkpoint,
  readings: Beliefs["readings"] = () => 0,
  most = Number.POSITIVE_INFINITY,
): Search {
  const bounds: Bounds = { checkpoint: () => checkpoint(), isSpent: (share) => weigher.count > share * most };
  const beliefs = { prior: priorOf(departures, joints), readings };
  const classes = classesOf(weigher, departures, beliefs, { checkpoint });
  const asDrawn = annealed(weigher, weigher.firstLook(NOTHING));
  const byPrior = [...classes].sort((a, b) => b.log - a.log);
  const first = byPrior.flatMap((cls): Look[] => {
    checkpoint();
    if (cls.members[0] === NOTHING) return [{ cls, weighed: asDrawn }];
    if (bounds.isSpent(SHARES.first)) return [];
    return [{ cls, weighed: weigher.firstLook(cls.members[0]!, asDrawn.point) }];
  });
  const sound = first.find(isSound)!;
  const asAtFirst = weigher.firstLook(NOTHING, asDrawn.point).fit.log;
  const isAlike = ({ cls, weighed }: Look) =>
    !isValued(cls.members[0]!) && Math.abs(weighed.fit.log - asAtFirst) < SAME_AT_FIRST;
  const others = first.filter((look) => look !== sound);
  // What makes no difference to a single take is as likely as the drawing wherever the parts are.
  const alike = others.filter(isAlike);
  const few = ordered(others.filter((look) => !isAlike(look))).slice(0, LOOKED_TWICE);
  const kept = new Set([...few, ...alike, sound]);
  for (const look of first) if (!kept.has(look)) weigher.forget(look.cls.members[0]!);
  const fewer = ordered(narrowed(weigher, few, bounds)).slice(0, LOOKED_CLOSELY);
  const close = ordered([sound, ...closely(weigher, fewer, sound, bounds)]);
  const named = ordered([...close, ...besideValue(weigher, close, first, bounds.checkpoint)]);
  const drawn = fromTheBest(weigher, named, bounds.checkpoint);
  const { fit, point } = drawn.find(isSound)!.weighed;
  const final = [...drawn, ...alike.map(({ cls, weighed }) => ({ cls, weighed: { ...weighed, fit, point } }))];
  const candidates = final.flatMap(({ cls, weighed }) => {
    checkpoint();
    return candidatesOf(weigher, cls, weighed, beliefs);
  });
  const told = new Set([...candidates.map(({ weighed }) => weighed.departure), ...sound.cls.members]);
  const slight = departures.filter((each) => !told.has(each)).flatMap((each) => each.slight ?? []);
  const unseen = sound.cls.members.slice(1).flatMap(unseenName);
  return {
    candidates: candidates.sort((a, b) => b.score - a.score),
    unseen: unseen.map((fault) => ({ faults: [fault], logPrior: beliefs.prior([fault]) })),
    slight: slight.map((fault) => ({ faults: [fault], logPrior: beliefs.prior([fault]) + LOG_SLIGHT })),
    considered: departures.length,
    sound: final.find(isSound)!.weighed,
  };
}
