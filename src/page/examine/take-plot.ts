import uPlot from "uplot";
import { showQuantity } from "../../build-file/show-quantity.ts";
import type { ExaminedAnswer } from "../../contract/examine/examine-answer.ts";
import { plotColours } from "../curves/colours.ts";
import { FEW_FREQUENCY_TICKS_HZ, FREQUENCY_TICKS_HZ, showDb, showHz, tickHz } from "../curves/units.ts";
import { h } from "../dom/element.ts";

type Take = ExaminedAnswer["takes"][number];

const FONT = "12px system-ui, sans-serif";
const MIN_LABELLED_WIDTH = 420;
const OHMS_AT_0_DB = 1000;
const DECADE_DB = 20;
/** What varies less is no more than noise or a part's tolerance, and shall look like it. */
const LEAST_SPAN_DB = 20;

/** Where the measured curve lies farthest from the drawing's. */
function farthest({ frequencies, curves: { measured, drawn } }: Take) {
  const off = measured.map((level, i) => level - drawn[i]!);
  const at = off.reduce((best, each, i) => (Math.abs(each) > Math.abs(off[best]!) ? i : best), 0);
  return { hertz: frequencies[at] ?? 0, decibels: off[at] ?? 0 };
}

/** "10 kΩ" where the level is an impedance's, and the level elsewhere. */
function levelTick({ curves: { unit } }: Take, level: number): string {
  if (unit === "dB re 1 kΩ") return showQuantity(OHMS_AT_0_DB * 10 ** (level / DECADE_DB), "resistance", 2);
  return showDb(level, 0);
}

/** A little room beside the curves, and so much of it that two lines of the grid are seen. */
function atLeastWide(low: number, high: number): [number, number] {
  const [middle, half] = [(low + high) / 2, Math.max(0.55 * (high - low), LEAST_SPAN_DB / 2)];
  return [middle - half, middle + half];
}

function optionsOf(take: Take, width: number): uPlot.Options {
  const colours = plotColours();
  const look = { stroke: colours.ink, font: FONT };
  const grid = { stroke: colours.grid, width: 1 };
  const points = { show: false };
  const ticksHz = width < MIN_LABELLED_WIDTH ? FEW_FREQUENCY_TICKS_HZ : FREQUENCY_TICKS_HZ;
  const splits = (_: uPlot, __: number, low: number, high: number) => {
    const step = high - low > 2 * DECADE_DB ? DECADE_DB : DECADE_DB / 2;
    const first = Math.ceil(low / step);
    return Array.from({ length: Math.floor(high / step) - first + 1 }, (___, k) => step * (first + k));
  };
  return {
    width,
    height: Math.round(Math.min(300, Math.max(200, 0.5 * width))),
    scales: { x: { distr: 3, time: false }, y: { range: (_, low, high) => atLeastWide(low, high) } },
    series: [
      {},
      { stroke: colours.current, width: 2.5, points },
      { stroke: colours.ink, width: 1.5, dash: [6, 4], points },
      ...(take.curves.best ? [{ stroke: colours.other, width: 1.5, dash: [2, 3], points }] : []),
    ],
    axes: [
      {
        ...look,
        splits: () => ticksHz,
        filter: (_, all) => all,
        values: (_, all) => all.map(tickHz),
        grid,
        ticks: { show: false },
        size: 26,
      },
      {
        ...look,
        splits,
        values: (_, all) => all.map((each) => levelTick(take, each)),
        grid,
        ticks: { show: false },
        size: 58,
      },
    ],
    legend: { show: false },
    cursor: { show: false },
    padding: [10, 12, 0, 0],
  };
}

const LINES = [
  ["measured", "measured"],
  ["drawn", "as drawn"],
  ["best", "the likeliest departure"],
] as const;

/** What a take measured, over the drawing's curve and that of the likeliest departure. */
export function createTakePlot(take: Take): HTMLElement {
  const { measured, drawn, best, unit } = take.curves;
  const { hertz, decibels } = farthest(take);
  const what = unit === "dB re 1 kΩ" ? "Impedance at the jack" : "What reaches the jack";
  const allowed = take.agrees ? ", which noise and the parts' tolerances allow" : "";
  const told = `${what} over frequency in Hz. Farthest from the drawing: ${showDb(decibels)} at ${showHz(hertz)}${allowed}.`;
  const place = h("div", { class: "take-plot", role: "img", "aria-label": told });
  const data = [take.frequencies, measured, drawn, ...(best ? [best] : [])].map((each) => [
    ...each,
  ]) as uPlot.AlignedData;
  let plot: uPlot | undefined;
  const draw = () => {
    plot?.destroy();
    plot = place.clientWidth > 0 ? new uPlot(optionsOf(take, place.clientWidth), data, place) : undefined;
  };
  new ResizeObserver(() => place.clientWidth !== plot?.width && draw()).observe(place);
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", draw);
  const lines = LINES.filter(([key]) => take.curves[key] !== null);
  return h(
    "figure",
    { class: "take-figure" },
    place,
    h(
      "figcaption",
      {},
      h(
        "span",
        { class: "take-legend" },
        lines.map(([key, words]) => h("span", { class: `take-line take-line-${key}` }, words)),
      ),
      told,
    ),
  );
}
