import type uPlot from "uplot";
import { REFERENCE_HZ } from "../../response/features.ts";
import type { PlotColours } from "./colours.ts";
import { FREQUENCIES_HZ } from "./frequencies.ts";
import { referenceLevelDb } from "./levels.ts";
import type { Picture } from "./picture.ts";
import { showDb, showHz } from "./units.ts";

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
  const offset = picture.view === "true" ? 0 : referenceLevelDb(picture.family.current.magnitude);
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

/** A place taken on the canvas, in its pixels. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Height of a label and of the mark that it stands over. */
const BELOW = 38;

/** Keeps a label whole: where there is no room above its mark it stands below, and at the right edge it moves inside. */
function label(
  pen: Pen,
  text: string,
  { x, y, least }: { x: number; y: number; least: number },
  colours: PlotColours,
): Box {
  const { context, ratio } = pen;
  const base = y - 15 * ratio < least ? y + BELOW * ratio : y;
  context.font = `${12 * ratio}px system-ui, sans-serif`;
  const width = context.measureText(text).width + 8 * ratio;
  const right = context.canvas.width - 16 * ratio;
  const left = Math.max(4 * ratio, Math.min(x - width / 2, right - width));
  context.fillStyle = colours.paper;
  context.globalAlpha = 0.85;
  const box = { left, top: base - 15 * ratio, width, height: 18 * ratio };
  context.fillRect(box.left, box.top, box.width, box.height);
  context.globalAlpha = 1;
  context.fillStyle = colours.current;
  context.textAlign = "left";
  context.textBaseline = "alphabetic";
  context.fillText(text, left + 4 * ratio, base - 2 * ratio);
  return box;
}

function drawPeak(pen: Pen, plot: uPlot, picture: Picture, offset: number, colours: PlotColours): Box[] {
  const { peak, magnitude } = picture.family.current;
  if (!peak) return [];
  const level = peak.level + referenceLevelDb(magnitude) - offset;
  const [x, y, size] = [pen.x(peak.frequency), pen.y(level), 5 * pen.ratio];
  pen.context.beginPath();
  pen.context.arc(x, y, size, 0, 2 * Math.PI);
  pen.context.fillStyle = colours.paper;
  pen.context.fill();
  pen.context.lineWidth = 2 * pen.ratio;
  pen.context.strokeStyle = colours.current;
  pen.context.stroke();
  const text = `peak ${showHz(peak.frequency)}, ${showDb(peak.level)}`;
  const box = label(pen, text, { x, y: y - size * 2, least: plot.bbox.top }, colours);
  return [box, { left: x - size, top: y - size, width: 2 * size, height: 2 * size }];
}

function drawCutoff(pen: Pen, plot: uPlot, picture: Picture, offset: number, colours: PlotColours): Box[] {
  const { cutoff, magnitude } = picture.family.current;
  if (cutoff === null || cutoff > FREQUENCIES_HZ.at(-1)!) return [];
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
  const top = pen.y(referenceLevelDb(magnitude) + CUTOFF_DB - offset);
  const at = { x, y: bottom - 6 * ratio, least: plot.bbox.top };
  return [
    label(pen, `−3 dB ${showHz(cutoff)}`, at, colours),
    { left: x - ratio, top, width: 2 * ratio, height: bottom - top },
  ];
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

/** Peak and cutoff of the current curve, and where the reference level is taken. @returns the places they take */
export function drawMarks(plot: uPlot, picture: Picture, colours: PlotColours): Box[] {
  let taken: Box[] = [];
  const offset = picture.view === "true" ? 0 : referenceLevelDb(picture.family.current.magnitude);
  withinPlot(plot, (pen) => {
    if (picture.view === "reference") drawReference(pen, plot, colours);
    taken = [...drawCutoff(pen, plot, picture, offset, colours), ...drawPeak(pen, plot, picture, offset, colours)];
  });
  return taken;
}
