import type { ReadDrawing } from "../../contract/bench/passport.ts";
import type { Pdf } from "./pdf.ts";

type Shape = ReadDrawing["shapes"][number];
type Line = Extract<Shape, { kind: "line" }>;
type Text = Extract<Shape, { kind: "text" }>;

/** Millimetres. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** In the drawing's units: a dot of nothing is no dash of a PDF. */
const LEAST_DASH = 0.01;

/** @returns whether the page holds the path: radii are scaled up until they reach, and may leave the range of a PDF's numbers */
function hasPath(page: Pdf, d: string): boolean {
  try {
    page.path(d);
    return true;
  } catch {
    // Ends what was begun, and paints nothing.
    page.addContent("n");
    return false;
  }
}

function drawLine(page: Pdf, { d, stroke, fill, width = 1, dash, round }: Line): void {
  if (d.trim() === "" || !hasPath(page, d)) return;
  if (round) page.lineCap("round").lineJoin("round");
  page.lineWidth(width);
  if (dash?.some((length) => length > 0)) {
    const [drawn, space = drawn] = dash.map((length) => Math.max(length, LEAST_DASH));
    page.dash(drawn!, { space });
  }
  if (stroke && fill) page.fillAndStroke(fill, stroke);
  else if (stroke) page.stroke(stroke);
  else if (fill) page.fill(fill);
}

/** Of the text's size. */
const HALO = 0.3;
const SHARE_BEFORE = { start: 0, middle: 0.5, end: 1 } as const;

function drawText(page: Pdf, { text, x, y, size, fill = "#000000", bold, anchor }: Text): void {
  page.font(bold ? "bold" : "plain").fontSize(size);
  const from = x - SHARE_BEFORE[anchor] * page.widthOfString(text);
  const place = { lineBreak: false, baseline: "alphabetic" } as const;
  // A wire that runs under a text leaves it readable.
  page
    .lineWidth(HALO * size)
    .lineJoin("round")
    .strokeColor("#ffffff");
  page.text(text, from, y, { ...place, stroke: true, fill: false });
  page.fillColor(fill).text(text, from, y, place);
}

/** Draws a picture as large as its area holds it, in the middle. @returns the height it takes, millimetres */
export function drawOnPaper(page: Pdf, { box, shapes }: ReadDrawing, area: Area): number {
  const [left, top, width, height] = box;
  const scale = Math.min(area.width / width, area.height / height);
  page.save();
  page
    .translate(area.x + (area.width - width * scale) / 2, area.y)
    .scale(scale)
    .translate(-left, -top);
  for (const shape of shapes) {
    page.save();
    if (shape.at) page.transform(...shape.at);
    if (shape.kind === "line") drawLine(page, shape);
    else drawText(page, shape);
    page.restore();
  }
  page.restore();
  return height * scale;
}
