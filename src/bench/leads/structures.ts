import {
  ARRANGEMENT_PRIOR,
  BROKEN_COIL_PRIOR,
  BROKEN_LEAD_PRIOR,
  COILS_PRIOR,
  DOUBLED_LEAD_PRIOR,
  METAL_PRIOR,
  ODD_LEAD_PRIOR,
  TAP_PRIOR,
} from "./priors.ts";
import type { CoilCount } from "./question.ts";
import type { Arrangement, End, Place, Structure } from "./structure.ts";
import { otherEnd } from "./structure.ts";

interface Joined {
  readonly arrangement: Arrangement;
  readonly ends: readonly (readonly End[])[];
  readonly weight: number;
}

const FIRST: readonly End[] = [0, 1];
const SECOND: readonly End[] = [2, 3];

/** Every way in which the ends of the coils may be joined inside. */
function joinedEnds(coils: CoilCount): Joined[] {
  if (coils === 1) return [{ arrangement: "one", ends: [[0], [1]], weight: 1 }];
  const series = FIRST.flatMap((a) =>
    SECOND.map(
      (b): Joined => ({
        arrangement: "series",
        ends: [[otherEnd(a)], [a, b], [otherEnd(b)]],
        weight: ARRANGEMENT_PRIOR.series / 4,
      }),
    ),
  );
  const parallel = SECOND.map(
    (b): Joined => ({
      arrangement: "parallel",
      ends: [
        [0, b],
        [1, otherEnd(b)],
      ],
      weight: ARRANGEMENT_PRIOR.parallel / 2,
    }),
  );
  const apart: Joined = { arrangement: "apart", ends: [[0], [1], [2], [3]], weight: ARRANGEMENT_PRIOR.apart };
  return [apart, ...series, ...parallel];
}

interface Brought extends Joined {
  readonly leadCounts: readonly number[];
  /** Ends that should have a lead and have none. */
  readonly missing: number;
}

const isTap = ({ arrangement }: Joined, index: number) => arrangement === "series" && index === 1;

/** Which places have a lead: a joint of two coils in a row may, every other place should, and at most one of those has none. */
function broughtOut(joined: Joined): Brought[] {
  const full = joined.ends.map(() => 1);
  const tapped = joined.arrangement === "series" ? [true, false] : [true];
  return tapped.flatMap((hasTap) => {
    const weight = joined.weight * (joined.arrangement !== "series" ? 1 : hasTap ? TAP_PRIOR : 1 - TAP_PRIOR);
    const counts = full.map((_, index) => (isTap(joined, index) && !hasTap ? 0 : 1));
    const without = joined.ends.flatMap((_, index) =>
      isTap(joined, index) ? [] : [counts.map((count, each) => (each === index ? 0 : count))],
    );
    return [
      { ...joined, weight, leadCounts: counts, missing: 0 },
      ...without.map((leadCounts) => ({ ...joined, weight: weight / without.length, leadCounts, missing: 1 })),
    ];
  });
}

type Metalled = Pick<Structure, "places" | "metalAt" | "leadCounts" | "weight">;

/** Where the metal may be. */
function metalled({ ends, leadCounts, weight }: Brought, hasMetal: boolean): Metalled[] {
  const places: Place[] = ends.map((each) => ({ ends: each, hasMetal: false }));
  if (!hasMetal) return [{ places, metalAt: -1, leadCounts, weight }];
  const reachable = leadCounts.flatMap((count, index) => (count > 0 ? [index] : []));
  const tiedWeight = (weight * METAL_PRIOR.tied) / reachable.length;
  const tied = reachable.flatMap((at): Metalled[] => {
    const withMetal = places.map((place, index) => (index === at ? { ...place, hasMetal: true } : place));
    const doubled = leadCounts.map((count, index) => (index === at ? count + 1 : count));
    return [
      { places: withMetal, metalAt: at, leadCounts, weight: tiedWeight * (1 - DOUBLED_LEAD_PRIOR) },
      { places: withMetal, metalAt: at, leadCounts: doubled, weight: tiedWeight * DOUBLED_LEAD_PRIOR },
    ];
  });
  return [
    { places, metalAt: -1, leadCounts, weight: weight * METAL_PRIOR.unreached },
    {
      places: [...places, { ends: [], hasMetal: true }],
      metalAt: places.length,
      leadCounts: [...leadCounts, 1],
      weight: weight * METAL_PRIOR.drain,
    },
    ...tied,
  ];
}

/** A lead that broke off leaves both an end without a lead and a lead without an end. */
function oddLeadsWeight(missing: number, spares: number): number {
  const brokenOff = Math.min(missing, spares);
  return BROKEN_LEAD_PRIOR ** brokenOff * ODD_LEAD_PRIOR ** (missing + spares - 2 * brokenOff);
}

function brokenWays(coils: CoilCount): { broken: readonly [boolean, boolean]; weight: number }[] {
  const chance = (isBroken: boolean) => (isBroken ? BROKEN_COIL_PRIOR : 1 - BROKEN_COIL_PRIOR);
  return [false, true].flatMap((first) =>
    (coils === 1 ? [false] : [false, true]).map((second) => ({
      broken: [first, second] as const,
      weight: chance(first) * (coils === 1 ? 1 : chance(second)),
    })),
  );
}

/** Every pickup of so many coils that so many leads may come out of. */
export function structuresOf(coils: CoilCount, leadCount: number, hasMetal: boolean): Structure[] {
  return joinedEnds(coils)
    .flatMap(broughtOut)
    .flatMap((brought) => metalled(brought, hasMetal).map((each) => ({ brought, ...each })))
    .flatMap(({ brought, weight, ...metal }) => {
      const spares = leadCount - metal.leadCounts.reduce((sum, count) => sum + count, 0);
      if (spares < 0) return [];
      const odd = COILS_PRIOR[coils] * weight * oddLeadsWeight(brought.missing, spares);
      return brokenWays(coils).map((way) => ({
        coils,
        arrangement: brought.arrangement,
        ...metal,
        spares,
        broken: way.broken,
        weight: odd * way.weight,
      }));
    });
}

const knownWays = new Map<string, readonly (readonly number[])[]>();

/** Every way to name the leads: the place of each lead, −1 where it is joined to nothing. */
export function leadPlaces({ leadCounts, spares }: Structure): readonly (readonly number[])[] {
  // Few different counts come of all structures, and all of them together are a few thousand ways.
  const key = `${leadCounts} ${spares}`;
  const known = knownWays.get(key) ?? waysOf([...leadCounts, spares]);
  knownWays.set(key, known);
  return known;
}

function waysOf(left: number[]): number[][] {
  const nowhere = left.length - 1;
  const total = left.reduce((sum, count) => sum + count, 0);
  const ways: number[][] = [];
  const chosen: number[] = [];
  const choose = () => {
    if (chosen.length === total) {
      ways.push([...chosen]);
      return;
    }
    for (const [place, count] of left.entries()) {
      if (count === 0) continue;
      left[place] = count - 1;
      chosen.push(place === nowhere ? -1 : place);
      choose();
      chosen.pop();
      left[place] = count;
    }
  };
  choose();
  return ways;
}
