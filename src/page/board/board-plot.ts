import uPlot from "uplot";
import { markOf } from "../cells/marks.ts";
import { plotColours } from "../curves/colours.ts";
import { FREQUENCIES_HZ } from "../curves/frequencies.ts";
import { levelRangeDb, referenceLevelDb } from "../curves/levels.ts";
import { FEW_FREQUENCY_TICKS_HZ, FREQUENCY_TICKS_HZ, tickHz } from "../curves/units.ts";

/** A cell's curve, by the key that plays it. */
export interface BoardCurve {
  readonly key: string;
  /** Of the mark. */
  readonly index: number;
  /** dB at `FREQUENCIES_HZ`. */
  readonly magnitude: Float64Array;
}

const FONT = "12px system-ui, sans-serif";
const NARROW = 420;
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

function seriesOf({ index }: BoardCurve): uPlot.Series {
  const dash = DASHES[index % DASHES.length]!;
  return {
    stroke: () => colourOf(index),
    width: index < DASHES.length ? 1.75 : 2.75,
    points: { show: false },
    ...(dash.length > 0 ? { dash: [...dash] } : {}),
  };
}

function levelsOf({ magnitude }: BoardCurve): Float64Array {
  const reference = referenceLevelDb(magnitude);
  return magnitude.map((level) => level - reference);
}

function axesOf(width: number): uPlot.Axis[] {
  const { ink, grid } = plotColours();
  const look = {
    stroke: ink,
    font: FONT,
    labelFont: FONT,
    labelSize: 18,
    grid: { stroke: grid, width: 1 },
    ticks: { show: false },
  };
  const ticksHz = width < NARROW ? FEW_FREQUENCY_TICKS_HZ : FREQUENCY_TICKS_HZ;
  return [
    {
      ...look,
      scale: "x",
      label: "frequency, Hz",
      splits: () => ticksHz,
      filter: (_, splits) => splits,
      values: (_, splits) => splits.map(tickHz),
      size: 30,
    },
    {
      ...look,
      scale: "y",
      label: "level over 200 Hz, dB",
      values: (_, splits) => splits.map((value) => (value > 0 ? `+${value}` : `${value}`.replace("-", "−"))),
      size: 42,
    },
  ];
}

function drawKeys(plot: uPlot, curves: readonly BoardCurve[], levels: readonly Float64Array[]): void {
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

/** The curves of the board over each other, each by its colour, its dash and its key. */
export class BoardPlot {
  readonly #parent: HTMLElement;
  #plot: uPlot | undefined;
  #curves: readonly BoardCurve[] = [];

  constructor(parent: HTMLElement) {
    this.#parent = parent;
    new ResizeObserver(() => {
      if (this.#plot?.width !== this.#width) this.#draw();
    }).observe(parent);
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => this.#draw());
  }

  show(curves: readonly BoardCurve[]): void {
    this.#curves = curves;
    this.#draw();
  }

  get #width(): number {
    return Math.max(240, this.#parent.clientWidth);
  }

  #draw(): void {
    this.#plot?.destroy();
    this.#plot = undefined;
    if (this.#curves.length === 0 || !this.#parent.isConnected || this.#parent.clientWidth === 0) return;
    const [width, curves] = [this.#width, this.#curves];
    const levels = curves.map(levelsOf);
    this.#plot = new uPlot(
      {
        width,
        height: Math.round(Math.min(420, Math.max(206, width * 0.5))),
        scales: { x: { distr: 3, time: false, range: () => [20, 20_000] }, y: { range: () => levelRangeDb(levels) } },
        series: [{}, ...curves.map(seriesOf)],
        axes: axesOf(width),
        legend: { show: false },
        cursor: { show: false },
        padding: [14, 14, 0, 0],
        hooks: { draw: [(plot) => drawKeys(plot, curves, levels)] },
      },
      [FREQUENCIES_HZ, ...levels] as unknown as uPlot.AlignedData,
      this.#parent,
    );
  }
}
