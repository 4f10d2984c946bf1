import type { JointAge } from "../../bench/faults/priors/fault-shares.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Checkpoint } from "../../checkpoint.ts";
import { type Departure, NOTHING } from "../departures/departure.ts";
import { type Candidate, candidatesOf, type Named } from "./candidates.ts";
import { type Beliefs, classesOf, isValued, priorOf, unseenName } from "./classes.ts";
import {
  annealed,
  type Bounds,
  besideValue,
  closely,
  fromTheBest,
  isSound,
  type Look,
  narrowed,
  ordered,
  SHARES,
} from "./looks.ts";
import { pairsBeside } from "./pairs.ts";
import type { Weighed } from "./weighed.ts";
import type { Weigher } from "./weigher.ts";

/** How many go on from each look to the next. */
const LOOKED_TWICE = 40;
const LOOKED_CLOSELY = 12;
/** Looks that agree so far, in nats, are of networks that are the same to the jack. */
const SAME_AT_FIRST = 1e-3;
/** So many poor joints are too slight to show among tolerances, as ln (common practice, no source). */
const LOG_SLIGHT = Math.log(0.3);

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
  build: Build,
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
  const about = { point: asDrawn.point, name: "as drawn" };
  const first = byPrior.flatMap((cls): Look[] => {
    checkpoint();
    if (cls.members[0] === NOTHING) return [{ cls, weighed: asDrawn }];
    if (bounds.isSpent(SHARES.first)) return [];
    return [{ cls, weighed: weigher.firstLook(cls.members[0]!, about) }];
  });
  const sound = first.find(isSound)!;
  const asAtFirst = weigher.firstLook(NOTHING, about).fit.log;
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
  const seconds = byPrior.filter((cls) => cls !== sound.cls && !alike.some((look) => look.cls === cls));
  const { pairs, singles } = pairsBeside(build, weigher, drawn, seconds, beliefs, bounds);
  const better = drawn.map((look) => singles.find(({ cls }) => cls === look.cls) ?? look);
  const closest = singles.length > 0 ? fromTheBest(weigher, ordered(better), bounds.checkpoint) : better;
  const { fit, point } = closest.find(isSound)!.weighed;
  const final = [
    ...closest,
    ...pairs,
    ...alike.map(({ cls, weighed }) => ({ cls, weighed: { ...weighed, fit, point } })),
  ];
  const candidates = final.flatMap(({ cls, weighed }) => {
    checkpoint();
    return candidatesOf(cls, weighed, beliefs);
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
