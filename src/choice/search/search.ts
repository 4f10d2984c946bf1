import type { Build } from "../../build-file/schema.ts";
import { type Settings, withControl } from "../../build-file/settings.ts";
import { MAX_TRIED_COMBINATIONS } from "../../limits.ts";
import { type ComparisonRow, compare } from "../compare/compare.ts";
import { flatDrive } from "../drive.ts";
import { Guard } from "../guard.ts";
import { createUniform } from "../tolerance/spread.ts";
import type { Patch } from "../variant.ts";
import { type Free, type FreeSpec, searchSpace } from "./free-parts.ts";
import { COST_MEANINGS, type Score, type Scorer, scorerFor, type Wish } from "./wish.ts";

export interface ChosenValue {
  readonly name: string;
  readonly unit: Free["unit"];
  /** Null where the part is left out. */
  readonly value: number | null;
}

/** What a choice changes in another setting, against the build as it stands. */
export type Elsewhere = Pick<
  ComparisonRow,
  "label" | "loudnessDifference" | "largest" | "features" | "audible" | "verdict"
>;

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
}

const BEST_COUNT = 10;
/** Descents from different starting points where not everything can be tried. */
const DESCENTS = 40;
const DESCENT_SEED = 1;

type Combination = readonly number[];

interface Tried {
  readonly combination: Combination;
  readonly score: Score;
}

function patchesOf(frees: readonly Free[], combination: Combination): Patch[] {
  return frees.flatMap((free, i) => free.patchesFor(free.values[combination[i]!]!));
}

/** Scores combinations, each once. */
class Trials {
  readonly scored: Tried[] = [];
  readonly #known = new Map<string, number>();
  readonly #base: Guard;
  readonly #frees: readonly Free[];
  readonly #score: Scorer;
  readonly #checkpoint: () => void;

  readonly #most: number;

  constructor(base: Guard, frees: readonly Free[], score: Scorer, { checkpoint, most }: Required<SearchOptions>) {
    this.#base = base;
    this.#most = most;
    this.#frees = frees;
    this.#score = score;
    this.#checkpoint = checkpoint;
  }

  get areSpent(): boolean {
    return this.count >= this.#most;
  }

  get count(): number {
    return this.#known.size;
  }

  /** @returns the cost; Infinity where the wish means nothing */
  costOf(combination: Combination): number {
    const key = combination.join();
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    this.#checkpoint();
    const score = this.#score(this.#base.with(patchesOf(this.#frees, combination)));
    const cost = score?.cost ?? Number.POSITIVE_INFINITY;
    this.#known.set(key, cost);
    if (score) this.scored.push({ combination, score });
    return cost;
  }
}

function tryAll(trials: Trials, sizes: readonly number[]): void {
  const combination = sizes.map(() => 0);
  for (;;) {
    trials.costOf([...combination]);
    let at = sizes.length - 1;
    while (at >= 0 && combination[at] === sizes[at]! - 1) combination[at--] = 0;
    if (at < 0) return;
    combination[at]!++;
  }
}

/** Every pair of axes, each axis alone where there is only one. */
function axisPairs(count: number): [number, number][] {
  const axes = Array.from({ length: count }, (_, index) => index);
  if (count === 1) return [[0, 0]];
  return axes.flatMap((first) => axes.slice(first + 1).map((second): [number, number] => [first, second]));
}

/**
 * Goes to the best combination of two axes, then of two others, until none gains. Two at a time, since parts make up for each
 * other: a larger cap on a larger pot, a longer cable behind a larger volume.
 */
function descend(trials: Trials, sizes: readonly number[], start: Combination): void {
  let best = start;
  let cost = trials.costOf(start);
  for (let gained = true; gained; ) {
    gained = false;
    for (const [first, second] of axisPairs(sizes.length)) {
      for (let at = 0; at < sizes[first]! * (first === second ? 1 : sizes[second]!); at++) {
        if (trials.areSpent) return;
        const next = [...best];
        next[first] = at % sizes[first]!;
        if (first !== second) next[second] = Math.floor(at / sizes[first]!);
        const nextCost = trials.costOf(next);
        if (!(nextCost < cost)) continue;
        best = next;
        cost = nextCost;
        gained = true;
      }
    }
  }
}

function trySome(trials: Trials, sizes: readonly number[]): void {
  const uniform = createUniform(DESCENT_SEED);
  for (let descent = 0; descent < DESCENTS && !trials.areSpent; descent++)
    descend(
      trials,
      sizes,
      sizes.map((size) => Math.floor(size * uniform())),
    );
}

/** Every position at rest, then tone and volume turned down: where a choice may cost something. */
function otherSettings(guard: Guard): Settings[] {
  const { controls } = guard;
  const { main } = controls;
  const turn = (key: string, value: number) => withControl(controls, controls.atRest, key, value);
  const positions = main ? main.table.positions.map((_, index) => turn(main.name, index + 1)) : [controls.atRest];
  const turned = (["tone", "volume"] as const).flatMap((role) =>
    controls.potsWithRole(role).length === 0 ? [] : (role === "tone" ? [5, 0] : [5]).map((dial) => turn(role, dial)),
  );
  return [...positions, ...turned];
}

function elsewhereOf(original: Guard, chosen: Guard): Elsewhere[] {
  const drive = flatDrive();
  const settings = otherSettings(original);
  const { rows } = compare({ guard: original, drive, settings }, { guard: chosen, drive, settings }, null);
  return rows.map(({ label, loudnessDifference, largest, features, audible, verdict }) => ({
    label,
    loudnessDifference,
    largest,
    features,
    audible,
    verdict,
  }));
}

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
  { checkpoint = () => {}, most = MAX_TRIED_COMBINATIONS }: SearchOptions = {},
): SearchResult {
  const original = new Guard(build);
  const space = searchSpace(build, specs);
  const base = new Guard(space.build);
  const scorer = scorerFor(wish, original);
  const trials = new Trials(base, space.frees, scorer, { checkpoint, most });
  const sizes = space.frees.map(({ values }) => values.length);
  const combinations = sizes.reduce((product, size) => product * size, 1);
  const exhaustive = combinations <= most;
  if (exhaustive) tryAll(trials, sizes);
  else trySome(trials, sizes);
  const best = bestOf(trials.scored).map(({ combination, score }): Found => {
    const values = space.frees.map(({ name, unit, values: all }, i) => ({ name, unit, value: all[combination[i]!]! }));
    const chosen = base.with(patchesOf(space.frees, combination));
    return { ...score, values, elsewhere: elsewhereOf(original, chosen) };
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
