import { DB_PER_NEPER_OF_POWER } from "../../decibels.ts";
import { type BoundedSolution, type Box, boundedLeastSquares } from "./bounded-least-squares.ts";
import type { DistanceLaw } from "./distance-law.ts";
import type { Gaps } from "./gaps.ts";
import type { Predictor } from "./predictor.ts";
import type { MountedPickup } from "./screws.ts";

/** What is to be equal. */
export interface Target {
  /** Index of the position whose level the others are to come to; null lets all meet where the screws move least. */
  readonly reference: number | null;
  /** Whether the strings within a position count too. */
  readonly withStrings: boolean;
}

/** Levels by position and string. */
type Levels = readonly (readonly number[])[];

export interface Balancing {
  readonly pickups: readonly MountedPickup[];
  readonly laws: readonly DistanceLaw[];
  readonly target: Target;
  /** The levels at the heights as they are. */
  readonly now: Levels;
}

/** That positions agree comes before strings: a lever is heard every time, a string's level is half the hand's. A choice. */
const POSITION_WEIGHT = 2;
/** Just enough that nothing moves without need: 2 % of the level that the move costs. */
const REST_WEIGHT = 0.02;
/** Where strings do not matter nothing else keeps a pickup from tilting, were it for a hundredth of a decibel. */
const TILT_WEIGHT = 0.3;
/** A field that the law has no gap for. */
const NEAREST_METRES = 1e-4;

export function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** What the positions are to come to. */
export function targetLevel(levels: Levels, { target, now }: Pick<Balancing, "target" | "now">): number {
  return target.reference === null ? meanOf(levels.map(meanOf)) : meanOf(now[target.reference]!);
}

/** How far the levels are from balance, in weighted dB: the positions, then each string beside its position's mean. */
function imbalance(levels: Levels, balancing: Pick<Balancing, "target" | "now">): number[] {
  const goal = targetLevel(levels, balancing);
  const weight = POSITION_WEIGHT * Math.sqrt(levels[0]!.length);
  const positions = levels.map((strings) => weight * (meanOf(strings) - goal));
  if (!balancing.target.withStrings) return positions;
  const within = levels.flatMap((strings) => {
    const mean = meanOf(strings);
    return strings.map((level) => level - mean);
  });
  return [...positions, ...within];
}

function logsOf(pickups: readonly MountedPickup[]): Float64Array {
  return Float64Array.from(pickups.flatMap(({ gaps }) => [Math.log(gaps.bassMetres), Math.log(gaps.trebleMetres)]));
}

export function gapsFrom(logs: ArrayLike<number>): Gaps[] {
  return Array.from({ length: logs.length / 2 }, (_, index) => ({
    bassMetres: Math.exp(logs[2 * index]!),
    trebleMetres: Math.exp(logs[2 * index + 1]!),
  }));
}

function boxOf({ pickups, laws }: Balancing): Box {
  const lows = pickups.map(({ limits }, index) =>
    Math.max(limits.minMetres, NEAREST_METRES - laws[index]!.offsetMetres),
  );
  const twice = (values: readonly number[]) =>
    Float64Array.from(values.flatMap((value) => [Math.log(value), Math.log(value)]));
  return {
    low: twice(lows),
    high: twice(pickups.map(({ limits }, index) => Math.max(limits.maxMetres, lows[index]!))),
  };
}

/** Moving from the heights as they are, in weighted dB: both sides of a pickup, then its tilt. */
function movement(logs: ArrayLike<number>, { pickups, laws, target }: Balancing): number[] {
  const start = logsOf(pickups);
  return pickups.flatMap((_, index) => {
    const perNeper = 2 * DB_PER_NEPER_OF_POWER * Math.max(0.1, Math.abs(laws[index]!.exponent));
    const [bass, treble] = [2 * index, 2 * index + 1].map((side) => perNeper * (logs[side]! - start[side]!));
    return [REST_WEIGHT * bass!, REST_WEIGHT * treble!, target.withStrings ? 0 : TILT_WEIGHT * (bass! - treble!)];
  });
}

/** What a choice of gaps costs: the sum of squares that the solution has the least of. */
export function costOf(levels: Levels, gaps: readonly Gaps[], balancing: Balancing): number {
  const logs = gaps.flatMap(({ bassMetres, trebleMetres }) => [Math.log(bassMetres), Math.log(trebleMetres)]);
  return [...imbalance(levels, balancing), ...movement(logs, balancing)].reduce((sum, value) => sum + value * value, 0);
}

/** How the residuals change where one string of one position is higher by 1 dB, now and then. */
export function shiftOf(levels: Levels, balancing: Balancing, position: number, string: number): Float64Array {
  const raised = (of: Levels) =>
    of.map((strings, k) => strings.map((level, s) => (k === position && s === string ? level + 1 : level)));
  const before = imbalance(levels, balancing);
  const after = imbalance(raised(levels), { target: balancing.target, now: raised(balancing.now) });
  const still = movement(logsOf(balancing.pickups), balancing).length;
  return Float64Array.from([...after.map((value, index) => value - before[index]!), ...Array(still).fill(0)]);
}

export function residualsAt(logs: Float64Array, predict: Predictor, balancing: Balancing): Float64Array {
  return Float64Array.from([...imbalance(predict(gapsFrom(logs)), balancing), ...movement(logs, balancing)]);
}

/** The gaps that bring the levels nearest to balance within every pickup's limits; unknowns are logarithms, bass then treble. */
export function balance(predict: Predictor, balancing: Balancing): BoundedSolution {
  return boundedLeastSquares(
    (logs) => residualsAt(logs, predict, balancing),
    logsOf(balancing.pickups),
    boxOf(balancing),
  );
}
