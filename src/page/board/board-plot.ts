import uPlot from "uplot";
import { FREQUENCIES_HZ } from "../curves/frequencies.ts";
import { levelRangeDb } from "../curves/levels.ts";
import { axesOf } from "./plot/axes.ts";
import { type BoardCurve, drawKeys, levelsOf, seriesOf } from "./plot/curve-looks.ts";

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
