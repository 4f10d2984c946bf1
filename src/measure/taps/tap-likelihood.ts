import type { ForetoldTap } from "./foretold-taps.ts";
import type { HeardTap } from "./hear-taps.ts";
import {
  ANYWHERE_DB,
  fitCells,
  type LevelCell,
  levelCell,
  levelDensity,
  levelsPrior,
  MISLABELLED,
  type TapLevels,
} from "./tap-levels.ts";

/** A first swing the wrong way for a whole group, past what the group itself shows. */
const WRONG_SIGN = 0.02;

interface Cell extends LevelCell {
  /** That the sign is the foretold one's. */
  readonly agrees: number;
}

function cellOf(heard: HeardTap, foretold: ForetoldTap): Cell {
  const cell = levelCell(heard, foretold);
  const size = Math.hypot(foretold.re, foretold.im);
  const straight = size > 0 ? foretold.re / size : 0;
  return { ...cell, agrees: 0.5 + (0.5 - WRONG_SIGN) * straight * cell.own };
}

/** Of one step, where hearing nothing has a chance, and a level a density in dB for either sign: together they make 1. */
function cellChance(cell: Cell, levels: TapLevels, flip: 1 | -1): number {
  const { level, sign, certainty } = cell.heard;
  const placed = levelDensity(cell, levels);
  if (level === undefined) return (1 - MISLABELLED) * placed + MISLABELLED / 2;
  const agrees = flip * sign > 0 ? cell.agrees : 1 - cell.agrees;
  const signed = certainty * agrees + (1 - certainty) * (1 - agrees);
  return (1 - MISLABELLED) * placed * signed + MISLABELLED / (4 * ANYWHERE_DB);
}

/** How likely one step is heard so where the levels are known. */
export function tapChance(heard: HeardTap, foretold: ForetoldTap, levels: TapLevels, flip: 1 | -1): number {
  return cellChance(cellOf(heard, foretold), levels, flip);
}

/**
 * ln of how likely taps are heard so, where a guard foretells them so: levels free by the take's gain and a little by row, signs free by
 * one flip of the whole take.
 */
export function tapLogLikelihood(heard: readonly HeardTap[], foretold: readonly ForetoldTap[]): number {
  const cells = heard.map((each, i) => cellOf(each, foretold[i]!));
  const levels = fitCells(cells);
  const [up, down] = ([1, -1] as const).map((flip) =>
    cells.reduce((sum, cell) => sum + Math.log(cellChance(cell, levels, flip)), levelsPrior(levels)),
  ) as [number, number];
  const best = Math.max(up, down);
  return best + Math.log((Math.exp(up - best) + Math.exp(down - best)) / 2);
}
