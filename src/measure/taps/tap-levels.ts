import { decibels } from "../../decibels.ts";
import type { ForetoldTap } from "./foretold-taps.ts";
import type { HeardTap } from "./hear-taps.ts";

/** Of a row's level from one setting to the next: hands differ by 6 dB from tap to tap, less in the middle of three. dB; common practice, no source. */
export const HAND_DB = 3.5;
/** Of one row's level about the others': magnets, poles, windings. */
export const ROW_DB = 4;
/** Of what leaks in. */
export const LEAK_DB = 8;
/** A group under the wrong label, or none of a row at all. */
export const MISLABELLED = 0.02;
/** Over so many dB it may then lie anywhere. */
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

function fitFrom(heard: readonly LevelCell[], gain: number): TapLevels {
  const names = [...new Set(heard.map(({ row }) => row))];
  let levels: TapLevels = { gain, rows: new Map() };
  for (let round = 0; round < ROUNDS; round += 1) {
    const all = weighed(heard, levels);
    const { rows } = levels;
    const next = meanOver(all, ({ row }) => rows.get(row) ?? 0, 0);
    const over = names.map((name): [string, number] => {
      const own = all.filter(({ row }) => row === name);
      return [name, meanOver(own, () => next, 1 / ROW_DB ** 2)];
    });
    levels = { gain: next, rows: new Map(over) };
  }
  return levels;
}

function logLikelihood(cells: readonly LevelCell[], levels: TapLevels): number {
  const rows = [...levels.rows.values()].reduce((sum, over) => sum - (over / ROW_DB) ** 2 / 2, 0);
  return cells.reduce((sum, cell) => {
    const anywhere = cell.heard.level === undefined ? 0.5 : 1 / ANYWHERE_DB;
    return sum + Math.log((1 - MISLABELLED) * levelDensity(cell, levels) + MISLABELLED * anywhere);
  }, rows);
}

/** Of the gains that coils which should sound ask for: a guard with much amiss has its true one among the highest. */
const BEGIN_AT = [0.5, 0.75, 0.95];

/** The gain and rows that fit best, groups that fit nowhere left to be mislabelled ones. */
export function fitCells(cells: readonly LevelCell[]): TapLevels {
  const heard = cells.filter(({ heard: { level } }) => level !== undefined);
  const direct = heard.filter(({ own }) => own > 0.5);
  const gains = (direct.length > 0 ? direct : heard)
    .map(({ heard: { level }, foretold }) => level! - foretold)
    .sort((a, b) => a - b);
  const fits = BEGIN_AT.map((share) => fitFrom(heard, gains[Math.floor(share * (gains.length - 1))] ?? 0));
  const worth = fits.map((levels) => logLikelihood(cells, levels));
  return fits[worth.indexOf(Math.max(...worth))]!;
}

export function fitTapLevels(heard: readonly HeardTap[], foretold: readonly ForetoldTap[]): TapLevels {
  return fitCells(heard.map((each, i) => levelCell(each, foretold[i]!)));
}
