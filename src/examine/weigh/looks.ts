import { NOTHING } from "../departures/departure.ts";
import type { Class } from "./classes.ts";
import { FIRST_FLOOR, NARROWED_FLOOR } from "./floor.ts";
import type { Weighed } from "./weighed.ts";
import type { Weigher } from "./weigher.ts";

const NARROWING_ROUNDS = 4;
/** Of the best, so many begin again from where the very best has its parts. */
const TRIED_AGAIN = 6;
/** Further behind the best than this, in nats, none is gone on with. */
const HOPELESS = 40;
/** A guard that fits no better than this, chi-square over degrees, may have been led astray by where it began. */
const POOR_FIT = 0.4;

/** A usual value this near the one that fits, in ln, may be it. */
const NEAR_VALUE = 0.4;

export interface Look {
  readonly cls: Class;
  readonly weighed: Weighed;
}

export const scoreOf = ({ cls, weighed }: Look) => cls.log + weighed.fit.log;
export const ordered = <Any extends Look>(looks: readonly Any[]): Any[] =>
  [...looks].sort((a, b) => scoreOf(b) - scoreOf(a));
export const isSound = ({ cls }: Look) => cls.members[0] === NOTHING;

/** What ends the work, and after how much of it. */
export interface Bounds {
  readonly checkpoint: () => void;
  readonly isSpent: (share: number) => boolean;
}

/** Of all that may be weighed, what may be spent up to the end of each stage. */
export const SHARES = { first: 0.4, narrowed: 0.75, closely: 1 } as const;

const isPoor = ({ fit }: Weighed) => !(fit.chiSquare < POOR_FIT * fit.degrees);

/** Begun again a little aside, where it does not do: it may stand on a ridge between two better places. */
function unstuck(weigher: Weigher, found: Weighed, hopeless = Number.NEGATIVE_INFINITY): Weighed {
  if (!isPoor(found)) return found;
  const again = weigher.refined(weigher.aside(found), { hopeless });
  return again.fit.log > found.fit.log ? again : found;
}

/** Under ever lower floors: what is far off is brought near first. */
export function annealed(weigher: Weigher, from: Weighed): Weighed {
  const near = [FIRST_FLOOR, NARROWED_FLOOR].reduce((at, floor) => weigher.refined(at, { floor }), from);
  return unstuck(weigher, weigher.refined(near));
}

export function narrowed(weigher: Weigher, looks: readonly Look[], { checkpoint, isSpent }: Bounds): Look[] {
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
  const refined = unstuck(weigher, weigher.refined(from, { hopeless }), hopeless);
  if (!isPoor(refined)) return refined;
  const again = weigher.refined(weigher.fromDrawing(from), { hopeless });
  return again.fit.log > refined.fit.log ? again : refined;
}

export function closely(
  weigher: Weigher,
  looks: readonly Look[],
  sound: Look,
  { checkpoint, isSpent }: Bounds,
): Look[] {
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
export function besideValue(
  weigher: Weigher,
  looks: readonly Look[],
  all: readonly Look[],
  checkpoint: () => void,
): Look[] {
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
export function fromTheBest(weigher: Weigher, looks: readonly Look[], checkpoint: () => void): Look[] {
  const [best] = looks;
  return looks.map((look, index) => {
    const isNear = index < TRIED_AGAIN && scoreOf(look) > scoreOf(best!) - HOPELESS;
    if (index === 0 || !(isNear || isSound(look))) return look;
    checkpoint();
    const again = weigher.refined(weigher.movedTo(look.weighed, best!.weighed.point));
    return again.fit.log > look.weighed.fit.log ? { cls: look.cls, weighed: again } : look;
  });
}
