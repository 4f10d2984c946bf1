import uPlot from "uplot";
import { breath } from "../dom/breath.ts";
import { type PlotColours, plotColours, shade } from "./colours.ts";
import { isOtherBuild } from "./family.ts";
import { FREQUENCIES_HZ } from "./frequencies.ts";
import { allLevels, levelRangeDb, levelWords } from "./levels.ts";
import { drawBand, drawMarks } from "./marks.ts";
import type { Picture } from "./picture.ts";
import { looksAlike, seriesLooks } from "./series.ts";
import { drawTraceLabels } from "./trace-labels.ts";
import { FEW_FREQUENCY_TICKS_HZ, FREQUENCY_TICKS_HZ, tickHz } from "./units.ts";

const FONT = "12px system-ui, sans-serif";
const MIN_LABELLED_WIDTH = 420;
/** On a phone, knobs and play fit under it. */
const MIN_HEIGHT = 206;

/** Narrower than this, more than one point of a curve falls on a pixel. */
const MIN_DENSE_WIDTH = 480;
const THIN_STEP = 3;

/** Every third point of a curve, some three pixels apart on a phone; the plot draws on over what is undefined. */
function thinned(levels: Float64Array): (number | undefined)[] {
  const last = levels.length - 1;
  return Array.from(levels, (level, index) => (index % THIN_STEP === 0 || index === last ? level : undefined));
}

/** The curves on a canvas: family behind, current setting bold in front. */
export class CurvePlot {
  readonly #parent: HTMLElement;
  readonly #onPointer: (index: number | null) => void;
  #plot: uPlot | undefined;
  #picture: Picture | undefined;
  /** Of the picture's curves, those behind first. */
  #levels: readonly Float64Array[] = [];
  #colours: PlotColours = plotColours();

  constructor(parent: HTMLElement, onPointer: (index: number | null) => void) {
    this.#parent = parent;
    this.#onPointer = onPointer;
    new ResizeObserver(() => this.#resize()).observe(parent);
    const restyle = () => {
      this.#colours = plotColours();
      this.#rebuild();
    };
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", restyle);
  }

  show(picture: Picture): void {
    const before = this.#picture;
    this.#picture = picture;
    this.#levels = allLevels(picture.family, picture.view);
    // Without a place on the page it has no width either; it is built as soon as it gets one.
    if (!this.#parent.isConnected) return;
    if (this.#plot && before && looksAlike(before.family, picture.family)) this.#plot.setData(this.#data(), true);
    else this.#rebuild();
  }

  /** Moves the pointer line by steps of the grid, for the keyboard. */
  step(by: number): void {
    const plot = this.#plot;
    if (!plot) return;
    const from = plot.cursor.idx ?? Math.floor(FREQUENCIES_HZ.length / 2);
    const index = Math.max(0, Math.min(FREQUENCIES_HZ.length - 1, from + by));
    plot.setCursor({ left: plot.valToPos(FREQUENCIES_HZ[index]!, "x"), top: plot.bbox.height / 4 });
  }

  /** The drawing as it stands, on the panel's colour. */
  toCanvas(): HTMLCanvasElement | undefined {
    const source = this.#plot?.ctx.canvas;
    if (!source) return undefined;
    const copy = document.createElement("canvas");
    copy.width = source.width;
    copy.height = source.height;
    const context = copy.getContext("2d")!;
    context.fillStyle = this.#colours.paper;
    context.fillRect(0, 0, copy.width, copy.height);
    context.drawImage(source, 0, 0);
    return copy;
  }

  #data(): uPlot.AlignedData {
    const behind = this.#picture!.family.behind.length;
    const isThin = this.#parent.clientWidth < MIN_DENSE_WIDTH;
    const shown = this.#levels.map((levels, index) => (isThin && index < behind ? thinned(levels) : levels));
    return [FREQUENCIES_HZ, ...shown] as unknown as uPlot.AlignedData;
  }

  #size(): { width: number; height: number } {
    const width = Math.max(240, this.#parent.clientWidth);
    return { width, height: Math.round(Math.min(440, Math.max(MIN_HEIGHT, width * 0.52))) };
  }

  #resize(): void {
    const size = this.#size();
    if (!this.#plot) void breath().then(() => this.#rebuild());
    else if (this.#plot.width !== size.width) this.#plot.setSize(size);
  }

  #rebuild(): void {
    if (!this.#picture) return;
    this.#plot?.destroy();
    this.#plot = new uPlot(this.#options(), this.#data(), this.#parent);
  }

  #series(): uPlot.Series[] {
    const { family } = this.#picture!;
    const looks = seriesLooks(family).map(({ width, dash }, index): uPlot.Series => {
      const stroke = () => (index < family.behind.length ? this.#familyStroke(index) : this.#colours.current);
      return { stroke, width, points: { show: false }, ...(dash ? { dash: [...dash] } : {}) };
    });
    return [{}, ...looks];
  }

  #familyStroke(index: number): string {
    const trace = this.#picture?.family.behind[index];
    if (!trace || isOtherBuild(trace)) return this.#colours.other;
    return shade(this.#colours.familyFrom, this.#colours.familyTo, trace.along);
  }

  #axes(): uPlot.Axis[] {
    const narrow = this.#parent.clientWidth < MIN_LABELLED_WIDTH;
    const look = { stroke: () => this.#colours.ink, font: FONT, labelFont: FONT, labelSize: 18 };
    const grid = { stroke: () => this.#colours.grid, width: 1 };
    const ticksHz = narrow ? FEW_FREQUENCY_TICKS_HZ : FREQUENCY_TICKS_HZ;
    return [
      {
        ...look,
        scale: "x",
        label: "frequency, Hz",
        splits: () => ticksHz,
        filter: (_, splits) => splits,
        values: (_, splits) => splits.map(tickHz),
        grid,
        ticks: { show: false },
        size: 30,
      },
      {
        ...look,
        scale: "y",
        label: () => levelWords(this.#picture!.view),
        incrs: [1, 2, 3, 6, 12],
        space: 28,
        values: (_, splits) => splits.map((value) => (value > 0 ? `+${value}` : `${value}`.replace("-", "−"))),
        grid,
        ticks: { show: false },
        size: 42,
      },
    ];
  }

  #options(): uPlot.Options {
    return {
      ...this.#size(),
      scales: {
        x: { distr: 3, time: false, range: () => [20, 20_000] },
        y: { range: () => levelRangeDb(this.#levels) },
      },
      series: this.#series(),
      axes: this.#axes(),
      legend: { show: false },
      cursor: { y: false, drag: { x: false, y: false, setScale: false }, points: { show: false } },
      padding: [12, 14, 0, 0],
      hooks: {
        drawAxes: [(plot) => drawBand(plot, this.#picture!, this.#colours)],
        draw: [
          (plot) => {
            const taken = drawMarks(plot, this.#picture!, this.#colours);
            drawTraceLabels(plot, this.#picture!.family, this.#levels, taken, this.#colours);
          },
        ],
        setCursor: [(plot) => this.#onPointer(plot.cursor.idx ?? null)],
      },
    };
  }
}
