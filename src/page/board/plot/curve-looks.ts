import type uPlot from "uplot";
import { markOf } from "../../cells/marks.ts";
import { FREQUENCIES_HZ } from "../../curves/frequencies.ts";
import { referenceLevelDb } from "../../curves/levels.ts";

/** A cell's curve, by the key that plays it. */
export interface BoardCurve {
  readonly key: string;
  /** Of the mark. */
  readonly index: number;
  /** dB at `FREQUENCIES_HZ`. */
  readonly magnitude: Float64Array;
}

/** Neighbours differ in dash as well as in colour; the second six are drawn thicker. */
const DASHES: readonly (readonly number[])[] = [[], [10, 4], [2, 3], [10, 4, 2, 4], [5, 5], [14, 3, 2, 3, 2, 3]];
/** Hz at which the letters stand in turn, where curves lie apart. */
const LETTERS_FROM_HZ = 3000;
const LETTER_STEP = 1.12;

function colourOf(index: number): string {
  return getComputedStyle(document.documentElement)
    .getPropertyValue(`--cell-${markOf(index).colour}`)
    .trim();
}

export function seriesOf({ index }: BoardCurve): uPlot.Series {
  const dash = DASHES[index % DASHES.length]!;
  return {
    stroke: () => colourOf(index),
    width: index < DASHES.length ? 1.75 : 2.75,
    points: { show: false },
    ...(dash.length > 0 ? { dash: [...dash] } : {}),
  };
}

/** dB over the level at the reference frequency. */
export function levelsOf({ magnitude }: BoardCurve): Float64Array {
  const reference = referenceLevelDb(magnitude);
  return magnitude.map((level) => level - reference);
}

/** Writes the keys on the curves. */
export function drawKeys(plot: uPlot, curves: readonly BoardCurve[], levels: readonly Float64Array[]): void {
  const { ctx } = plot;
  ctx.save();
  ctx.font = `bold ${Math.round(12 * devicePixelRatio)}px system-ui, sans-serif`;
  ctx.textAlign = "center";
  ctx.textBaseline = "bottom";
  for (const [at, { key, index }] of curves.entries()) {
    const hertz = LETTERS_FROM_HZ * LETTER_STEP ** at;
    const point = FREQUENCIES_HZ.findIndex((frequency) => frequency >= hertz);
    ctx.fillStyle = colourOf(index);
    ctx.fillText(
      key,
      plot.valToPos(hertz, "x", true),
      plot.valToPos(levels[at]![point]!, "y", true) - 3 * devicePixelRatio,
    );
  }
  ctx.restore();
}
