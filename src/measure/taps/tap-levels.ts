import { decibels, SILENCE_DB } from "../../decibels.ts";
import type { ForetoldTap } from "./foretold-taps.ts";
import type { HeardTap } from "./hear-taps.ts";

/** Of a row's level from one setting to the next: hands differ by 6 dB from tap to tap, less in the middle of three. dB; a judgement, no source. */
export const HAND_DB = 3.5;
/** Of one row's level about the others': magnets, poles, windings. */
export const ROW_DB = 4;
/** Of what leaks in. */
export const LEAK_DB = 8;
/** A group under the wrong label, or none of a row at all: one in a plan of fifty steps. A judgement, no source. */
export const MISLABELLED = 0.02;
/** Over so many dB it may then lie anywhere: from the least floor that an input leaves, some −65 dB, to full scale. */
export const ANYWHERE_DB = 60;
const ROUNDS = 8;

/** A step's level, as heard and as foretold. */
export interface LevelCell {
  readonly row: string;
  readonly heard: HeardTap;
  /** dB. */
  readonly foretold: number;
  readonly spread: number;
  /** How much of it comes through the row's own coil: a share of power. */
  readonly own: number;
}

export function levelCell(heard: HeardTap, { re, im, leak }: ForetoldTap): LevelCell {
  const own = re * re + im * im;
  const all = own + leak * leak;
  const share = all > 0 ? own / all : 0;
  return {
    row: `${heard.step.pickup} ${heard.step.coil}`,
    heard,
    foretold: decibels(Math.sqrt(all)),
    spread: Math.hypot(HAND_DB, (1 - share) * LEAK_DB),
    own: share,
  };
}

export const normal = (x: number, spread: number) =>
  Math.exp(-(x * x) / (2 * spread * spread)) / (spread * Math.sqrt(2 * Math.PI));

/** The share of a normal distribution under x deviations (the logistic stands for it, within 0.01; S. R. Bowling and others, 2009). */
export const under = (x: number) => 1 / (1 + Math.exp(-(0.07056 * x ** 3 + 1.5976 * x)));

/** Gain of the take, and what each row has over it, dB. */
export interface TapLevels {
  readonly gain: number;
  readonly rows: ReadonlyMap<string, number>;
}

const expectedLevel = ({ row, foretold }: LevelCell, { gain, rows }: TapLevels) =>
  gain + foretold + (rows.get(row) ?? 0);

export function levelDensity(cell: LevelCell, levels: TapLevels): number {
  const expected = expectedLevel(cell, levels);
  const { level, floor } = cell.heard;
  if (level === undefined) return under((floor - expected) / cell.spread);
  // A clipped tap is at least so loud.
  if (cell.heard.isClipped && expected > level) return normal(0, cell.spread);
  return normal(level - expected, cell.spread);
}

type Weighed = LevelCell & { readonly weight: number };

/** How sure each level is, under the levels as they stand: next to nothing where it fits nowhere. */
function weighed(cells: readonly LevelCell[], levels: TapLevels): Weighed[] {
  return cells.map((cell) => {
    const right = (1 - MISLABELLED) * levelDensity(cell, levels);
    return { ...cell, weight: right / (right + MISLABELLED / ANYWHERE_DB) / cell.spread ** 2 };
  });
}

/** The mean of what cells say over what is known of them, drawn to 0 by a prior of this weight. */
function meanOver(cells: readonly Weighed[], known: (cell: Weighed) => number, prior: number): number {
  const whole = cells.reduce((sum, { weight }) => sum + weight, prior);
  const sum = cells.reduce((all, cell) => all + cell.weight * (cell.heard.level! - cell.foretold - known(cell)), 0);
  return whole > 0 ? sum / whole : 0;
}

/** Of a guard that sounds at all, the loudest row is one that sounds: so far over the strongest foretold, and so surely. dB; a judgement, no source. */
const LOUDEST_OVER_DB = 3;
const LOUDEST_SPREAD_DB = 4;

/** What the gain is likely to be, by the loudest row alone. */
function loudestGain(heard: readonly LevelCell[], cells: readonly LevelCell[]): number {
  const most = (values: readonly number[]) => Math.max(SILENCE_DB, ...values);
  const loudest = most(heard.map(({ heard: { level } }) => level!));
  return loudest - most(cells.map(({ foretold }) => foretold)) - LOUDEST_OVER_DB;
}

function fitFrom(heard: readonly LevelCell[], begin: number): TapLevels {
  const names = [...new Set(heard.map(({ row }) => row))];
  const prior = 1 / LOUDEST_SPREAD_DB ** 2;
  let levels: TapLevels = { gain: begin, rows: new Map() };
  for (let round = 0; round < ROUNDS; round += 1) {
    const all = weighed(heard, levels);
    const { rows } = levels;
    const next = begin + meanOver(all, ({ row }) => begin + (rows.get(row) ?? 0), prior);
    const over = names.map((name): [string, number] => {
      const own = all.filter(({ row }) => row === name);
      return [name, meanOver(own, () => next, 1 / ROW_DB ** 2)];
    });
    levels = { gain: next, rows: new Map(over) };
  }
  return levels;
}

/** The gain and rows that fit best, groups that fit nowhere left to be mislabelled ones. */
export function fitCells(cells: readonly LevelCell[]): TapLevels {
  const heard = cells.filter(({ heard: { level } }) => level !== undefined);
  return heard.length === 0 ? { gain: 0, rows: new Map() } : fitFrom(heard, loudestGain(heard, cells));
}

/** ln of how likely those levels were before anything was heard, but for constants. */
export function levelsPrior({ rows }: TapLevels): number {
  return [...rows.values()].reduce((sum, over) => sum - (over / ROW_DB) ** 2 / 2, 0);
}

export function fitTapLevels(heard: readonly HeardTap[], foretold: readonly ForetoldTap[]): TapLevels {
  return fitCells(heard.map((each, i) => levelCell(each, foretold[i]!)));
}
