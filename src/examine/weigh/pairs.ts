import type { Build } from "../../build-file/schema.ts";
import type { Departure } from "../departures/departure.ts";
import { pairOf } from "../departures/pair.ts";
import { anyName, type Beliefs, type Class, isValued } from "./classes.ts";
import { NARROWED_FLOOR } from "./floor.ts";
import { type Bounds, isSound, type Look, ordered, scoreOf } from "./looks.ts";
import type { Weigher } from "./weigher.ts";

/** Chi-square over degrees from which a single departure leaves something over: of right answers one in twenty has as much. */
const DOUBT = 0.45;
/** Singles that a second departure is looked for beside. */
const MOST_SEEDS = 3;
/** Guards nearer than this to each other, as chi-square, are one seed. */
const SAME_SEED = 10;
/** Further behind the best single than this, in nats, one is no seed. */
const HOPELESS = 300;
/**
 * What a second departure must account better by than the first alone, in nats: one with a value of its own bends to whatever the laws of
 * tolerances leave over.
 */
const LEAST_GAIN = { fixed: 6, valued: 10 } as const;
/** How many pairs go on from each look to the next. */
const [LOOKED_TWICE, LOOKED_CLOSELY] = [12, 4];
const NARROWING_ROUNDS = 3;
/** Some seconds' worth, on a guard of any size. */
const MOST_PAIRS = 600;

/** A look at a pair, and at its first departure alone. */
interface PairLook extends Look {
  readonly alone: Look;
  readonly isSecondValued: boolean;
}

/** Pairs, and singles that were found to do better than they had. */
export interface Pairs {
  readonly pairs: readonly Look[];
  readonly singles: readonly Look[];
}

interface Seed {
  readonly look: Look;
  readonly name: string;
}

/** The best singles, each another guard to what was given. */
function seedsOf(weigher: Weigher, looks: readonly Look[]): Seed[] {
  const singles = ordered(looks.filter((look) => !isSound(look)));
  const seeds: Seed[] = [];
  for (const look of singles) {
    if (seeds.length === MOST_SEEDS || scoreOf(look) < scoreOf(singles[0]!) - HOPELESS) break;
    if (seeds.some((seed) => weigher.apart(seed.look.weighed, look.weighed) < SAME_SEED)) continue;
    seeds.push({ look, name: `beside ${seeds.length}` });
  }
  return seeds;
}

/** Any name of a class, as likely as it is with all its members. */
const commonest = (members: readonly Departure[], prior: Beliefs["prior"]) =>
  members.flatMap(anyName).reduce((best, each) => (prior([each]) > prior([best]) ? each : best));

/** ln of how likely a pair is before anything was recorded. */
function logOf(one: Class, other: Class, { prior, readings }: Beliefs): number {
  const faults = [one, other].map(({ members }) => commonest(members, prior));
  const isFixed = !isValued(one.members[0]!) && !isValued(other.members[0]!);
  const wide = Math.log(one.members.length * other.members.length);
  // What readings say of a value is only known once the takes say which.
  return prior(faults) + wide + (isFixed ? readings(faults) : 0);
}

const leavesDoubt = ({ weighed: { fit } }: Look) => fit.chiSquare > DOUBT * fit.degrees;

function pairLooks(
  build: Build,
  weigher: Weigher,
  seeds: readonly Seed[],
  classes: readonly Class[],
  beliefs: Beliefs,
  { checkpoint, isSpent }: Bounds,
): PairLook[] {
  const found: PairLook[] = [];
  const most = Math.floor(MOST_PAIRS / Math.max(1, seeds.length));
  for (const { look, name } of seeds) {
    for (const cls of classes.slice(0, most)) {
      checkpoint();
      if (isSpent(1)) return found;
      const pair = cls === look.cls ? undefined : pairOf(build, look.cls.members, cls.members);
      if (!pair) continue;
      const weighed = weigher.besideLook(pair, look.weighed, name);
      found.push({
        cls: { members: [pair], log: logOf(look.cls, cls, beliefs) },
        weighed,
        alone: look,
        isSecondValued: isValued(cls.members[0]!),
      });
      // Its networks are made again for the few that go on.
      weigher.forget(pair);
    }
  }
  return found;
}

/** Each single again from where the best pair with it has its parts: what it seemed to lack may have been a better start. */
function againAlone(weigher: Weigher, pairs: readonly PairLook[], checkpoint: () => void): ReadonlyMap<Class, Look> {
  const singles = new Map<Class, Look>();
  for (const { weighed, alone } of ordered(pairs)) {
    if (singles.has(alone.cls)) continue;
    checkpoint();
    const again = weigher.refined(weigher.aloneLook(alone.weighed, weighed));
    singles.set(alone.cls, again.fit.log > alone.weighed.fit.log ? { cls: alone.cls, weighed: again } : alone);
  }
  return singles;
}

/**
 * Two departures at once: where no single one accounts for everything, every other one is tried beside the best few.
 * @param looks at singles, each at its own likeliest parts
 * @param classes of all departures, the likeliest first
 */
export function pairsBeside(
  build: Build,
  weigher: Weigher,
  looks: readonly Look[],
  classes: readonly Class[],
  beliefs: Beliefs,
  bounds: Bounds,
): Pairs {
  if (!leavesDoubt(ordered(looks)[0]!)) return { pairs: [], singles: [] };
  const seeds = seedsOf(weigher, looks);
  const found = pairLooks(build, weigher, seeds, classes, beliefs, bounds);
  const refined = (looks: readonly PairLook[], options: Parameters<Weigher["refined"]>[1]) =>
    looks.map((look): PairLook => {
      bounds.checkpoint();
      return { ...look, weighed: weigher.refined(look.weighed, options) };
    });
  const first = ordered(found).slice(0, LOOKED_TWICE);
  const near = ordered(refined(first, { rounds: NARROWING_ROUNDS, floor: NARROWED_FLOOR }));
  for (const { cls } of near.slice(LOOKED_CLOSELY)) weigher.forget(cls.members[0]!);
  const close = refined(near.slice(0, LOOKED_CLOSELY), {});
  const singles = againAlone(weigher, close, bounds.checkpoint);
  const pairs = close.filter(
    ({ weighed: { fit }, alone, isSecondValued }) =>
      fit.log - singles.get(alone.cls)!.weighed.fit.log > (isSecondValued ? LEAST_GAIN.valued : LEAST_GAIN.fixed),
  );
  return { pairs, singles: [...singles.values()].filter((look) => !looks.includes(look)) };
}
