import type { Build } from "../../build-file/schema.ts";
import { MAX_TRIED_COMBINATIONS } from "../../limits.ts";
import { type Drive, flatDrive } from "../drive.ts";
import { Guard } from "../guard.ts";
import { DESCENTS, tryAll, trySome } from "./descent.ts";
import { type Elsewhere, elsewhereOf } from "./elsewhere.ts";
import type { Free, FreeSpec } from "./free-parts.ts";
import { searchSpace } from "./search-space.ts";
import { patchesOf, Trials, type Tried } from "./trials.ts";
import { COST_MEANINGS, type Score, scorerFor, type Wish } from "./wish.ts";

export interface ChosenValue {
  readonly name: string;
  readonly unit: Free["unit"];
  /** Null where the part is left out. */
  readonly value: number | null;
}

export interface Found extends Score {
  readonly values: readonly ChosenValue[];
  readonly elsewhere: readonly Elsewhere[];
}

export interface SearchResult {
  /** How many combinations there are, and how many were tried. */
  readonly combinations: number;
  readonly tried: number;
  readonly exhaustive: boolean;
  readonly method: string;
  readonly costMeaning: string;
  /** The build as it stands; null where the wish means nothing for it. */
  readonly now: Score | null;
  /** The best, best first, at most ten. Empty where the wish means nothing for any combination. */
  readonly best: readonly Found[];
}

export interface SearchOptions {
  /** Called between trials; may throw to give the work up. */
  readonly checkpoint?: () => void;
  /** Combinations up to which all are tried, and beyond which none more is. */
  readonly most?: number;
  /** What drives a guard's coils where it is told what is heard; every band alike where left out. */
  readonly driveOf?: (guard: Guard) => Drive;
}

const BEST_COUNT = 10;

/** Among equals the one found first, so that an answer never depends on how a sort breaks ties. */
function bestOf(scored: readonly Tried[]): Tried[] {
  return scored.toSorted((a, b) => a.score.cost - b.score.cost).slice(0, BEST_COUNT);
}

function methodWords(exhaustive: boolean, tried: number, combinations: number): string {
  if (exhaustive) return `all ${combinations} combinations were tried`;
  return (
    `${tried} of ${combinations} combinations were tried: ${DESCENTS} descents, two parts at a time, from different starting` +
    " points; a better combination may have been missed"
  );
}

/**
 * Looks for the values of free parts that come nearest to a wish.
 * @throws PresolderError REQUEST_INVALID for a free part or wish that does not fit the build
 */
export function search(
  build: Build,
  specs: readonly FreeSpec[],
  wish: Wish,
  { checkpoint = () => {}, most = MAX_TRIED_COMBINATIONS, driveOf = flatDrive }: SearchOptions = {},
): SearchResult {
  const original = new Guard(build);
  const space = searchSpace(build, specs);
  const base = new Guard(space.build);
  const scorer = scorerFor(wish, original);
  const trials = new Trials((combination) => base.with(patchesOf(space.frees, combination)), scorer, {
    checkpoint,
    most,
  });
  const sizes = space.frees.map(({ values }) => values.length);
  const combinations = sizes.reduce((product, size) => product * size, 1);
  const exhaustive = combinations <= most;
  if (exhaustive) tryAll(trials, sizes);
  else trySome(trials, sizes);
  const played = driveOf(original);
  const best = bestOf(trials.scored).map(({ combination, score }): Found => {
    const values = space.frees.map(({ name, unit, values: all }, i) => ({ name, unit, value: all[combination[i]!]! }));
    const chosen = base.with(patchesOf(space.frees, combination));
    return { ...score, values, elsewhere: elsewhereOf(original, chosen, played) };
  });
  return {
    combinations,
    tried: trials.count,
    exhaustive,
    method: methodWords(exhaustive, trials.count, combinations),
    costMeaning: COST_MEANINGS[wish.kind],
    now: scorer(original),
    best,
  };
}
