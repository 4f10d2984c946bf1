import type uPlot from "uplot";
import type { PlotColours } from "./colours.ts";
import type { Family } from "./family.ts";
import { FREQUENCIES_HZ } from "./frequencies.ts";
import type { Box } from "./marks.ts";

/** Curves nearer than this to a neighbour, in CSS pixels, have no room for a name of their own. */
const ROOM = 11;
const EDGE = 16;

const HALF_LABEL = 16;

/** Of the curve's points those that are looked at for a name: a name is wider than the three between them. */
const SPOTS = Array.from({ length: Math.ceil(FREQUENCIES_HZ.length / 4) }, (_, index) => 4 * index);

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly room: number;
}

/** Whether a name about a place would lie on something that is drawn over it. */
export function isTaken(x: number, y: number, reach: number, taken: readonly Box[]): boolean {
  return taken.some(
    ({ left, top, width, height }) =>
      x > left - reach && x < left + width + reach && y > top - reach && y < top + height + reach,
  );
}

/** Where a curve is furthest from all others within the plot, in canvas pixels. */
function clearestSpot(
  plot: uPlot,
  curves: readonly (readonly number[])[],
  xs: readonly number[],
  { own, reach, taken }: { own: number; reach: number; taken: readonly Box[] },
): Spot {
  const { left, top, width, height } = plot.bbox;
  const edge = EDGE * devicePixelRatio;
  let best: Spot = { x: 0, y: 0, room: 0 };
  for (const [i, x] of xs.entries()) {
    const y = curves[own]![i]!;
    if (x < left + edge * 2 || x > left + width - edge * 2 || y < top + edge || y > top + height - edge) continue;
    if (isTaken(x, y, reach, taken)) continue;
    let room = Number.POSITIVE_INFINITY;
    for (let other = 0; other < curves.length && room > best.room; other++)
      if (other !== own) room = Math.min(room, Math.abs(curves[other]![i]! - y));
    if (room > best.room) best = { x, y, room };
  }
  return best;
}

/** Writes each curve's name on it where there is room, so that shades need not be told apart; never where marks lie. */
export function drawTraceLabels(
  plot: uPlot,
  family: Family,
  levels: readonly ArrayLike<number>[],
  taken: readonly Box[],
  colours: PlotColours,
): void {
  const xs = SPOTS.map((spot) => plot.valToPos(FREQUENCIES_HZ[spot]!, "x", true));
  // Levels are drawn on a linear scale: two places on it tell all others.
  const zero = plot.valToPos(0, "y", true);
  const perDecibel = plot.valToPos(1, "y", true) - zero;
  const curves = levels.map((list) => SPOTS.map((spot) => zero + perDecibel * list[spot]!));
  const ratio = devicePixelRatio;
  const { ctx } = plot;
  ctx.save();
  ctx.font = `${11 * ratio}px system-ui, sans-serif`;
  ctx.textAlign = "center";
  ctx.textBaseline = "middle";
  for (const [index, trace] of family.behind.entries()) {
    const { x, y, room } = clearestSpot(plot, curves, xs, { own: index, reach: HALF_LABEL * ratio, taken });
    if (room < ROOM * ratio) continue;
    const text = trace.name.replace(/^(tone|volume) (?=[1-9]$)/, "");
    const half = ctx.measureText(text).width / 2 + 3 * ratio;
    ctx.fillStyle = colours.paper;
    ctx.fillRect(x - half, y - 7 * ratio, half * 2, 14 * ratio);
    ctx.fillStyle = colours.ink;
    ctx.fillText(text, x, y);
  }
  ctx.restore();
}
