import type uPlot from "uplot";
import { REFERENCE_HZ } from "../../response/features.ts";
import type { PlotColours } from "./colours.ts";
import { FREQUENCIES_HZ } from "./curve-cache.ts";
import { referenceLevelDb } from "./levels.ts";
import type { Picture } from "./plot.ts";
import { showDb, showHz } from "./units.ts";

/** What part tolerances leave open: level in dB at each frequency. */
export interface Band {
  readonly frequencies: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
}

export const CUTOFF_DB = -3;

interface Pen {
  readonly context: CanvasRenderingContext2D;
  readonly ratio: number;
  x(hertz: number): number;
  y(decibels: number): number;
}

function penFor(plot: uPlot): Pen {
  return {
    context: plot.ctx,
    ratio: devicePixelRatio,
    x: (hertz) => plot.valToPos(hertz, "x", true),
    y: (decibels) => plot.valToPos(decibels, "y", true),
  };
}

function withinPlot(plot: uPlot, draw: (pen: Pen) => void): void {
  const { ctx, bbox } = plot;
  ctx.save();
  ctx.beginPath();
  ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height);
  ctx.clip();
  draw(penFor(plot));
  ctx.restore();
}

/** The tolerance band lies behind every curve. */
export function drawBand(plot: uPlot, picture: Picture, colours: PlotColours): void {
  const { band } = picture;
  if (!band) return;
  const offset = picture.view === "true" ? 0 : referenceLevelDb(picture.family.current.curve.magnitude);
  withinPlot(plot, ({ context, x, y }) => {
    context.beginPath();
    for (const [index, hertz] of band.frequencies.entries()) context.lineTo(x(hertz), y(band.high[index]! - offset));
    for (let index = band.frequencies.length - 1; index >= 0; index--)
      context.lineTo(x(band.frequencies[index]!), y(band.low[index]! - offset));
    context.closePath();
    context.fillStyle = colours.band;
    context.fill();
  });
}

function label({ context, ratio }: Pen, text: string, x: number, y: number, colours: PlotColours): void {
  context.font = `${12 * ratio}px system-ui, sans-serif`;
  const width = context.measureText(text).width + 8 * ratio;
  const right = context.canvas.width - 16 * ratio;
  const left = Math.max(4 * ratio, Math.min(x - width / 2, right - width));
  context.fillStyle = colours.paper;
  context.globalAlpha = 0.85;
  context.fillRect(left, y - 15 * ratio, width, 18 * ratio);
  context.globalAlpha = 1;
  context.fillStyle = colours.current;
  context.textAlign = "left";
  context.textBaseline = "alphabetic";
  context.fillText(text, left + 4 * ratio, y - 2 * ratio);
}

function drawPeak(pen: Pen, picture: Picture, offset: number, colours: PlotColours): void {
  const { peak, magnitude } = picture.family.current.curve;
  if (!peak) return;
  const level = peak.level + referenceLevelDb(magnitude) - offset;
  const [x, y, size] = [pen.x(peak.frequency), pen.y(level), 5 * pen.ratio];
  pen.context.beginPath();
  pen.context.arc(x, y, size, 0, 2 * Math.PI);
  pen.context.fillStyle = colours.paper;
  pen.context.fill();
  pen.context.lineWidth = 2 * pen.ratio;
  pen.context.strokeStyle = colours.current;
  pen.context.stroke();
  label(pen, `peak ${showHz(peak.frequency)}, ${showDb(peak.level)}`, x, y - size * 2, colours);
}

function drawCutoff(pen: Pen, plot: uPlot, picture: Picture, offset: number, colours: PlotColours): void {
  const { cutoff, magnitude } = picture.family.current.curve;
  if (cutoff === null || cutoff > FREQUENCIES_HZ.at(-1)!) return;
  const x = pen.x(cutoff);
  const bottom = plot.bbox.top + plot.bbox.height;
  const { context, ratio } = pen;
  context.beginPath();
  context.setLineDash([3 * ratio, 4 * ratio]);
  context.moveTo(x, pen.y(referenceLevelDb(magnitude) + CUTOFF_DB - offset));
  context.lineTo(x, bottom);
  context.lineWidth = 1.5 * ratio;
  context.strokeStyle = colours.current;
  context.stroke();
  context.setLineDash([]);
  label(pen, `−3 dB ${showHz(cutoff)}`, x, bottom - 6 * ratio, colours);
}

function drawReference(pen: Pen, plot: uPlot, colours: PlotColours): void {
  const { context, ratio } = pen;
  const x = pen.x(REFERENCE_HZ);
  context.beginPath();
  context.setLineDash([1 * ratio, 3 * ratio]);
  context.moveTo(x, plot.bbox.top);
  context.lineTo(x, plot.bbox.top + plot.bbox.height);
  context.lineWidth = ratio;
  context.strokeStyle = colours.ink;
  context.stroke();
  context.setLineDash([]);
}

/** Peak and cutoff of the current curve, and where the reference level is taken. */
export function drawMarks(plot: uPlot, picture: Picture, colours: PlotColours): void {
  const offset = picture.view === "true" ? 0 : referenceLevelDb(picture.family.current.curve.magnitude);
  withinPlot(plot, (pen) => {
    if (picture.view === "reference") drawReference(pen, plot, colours);
    drawCutoff(pen, plot, picture, offset, colours);
    drawPeak(pen, picture, offset, colours);
  });
}
