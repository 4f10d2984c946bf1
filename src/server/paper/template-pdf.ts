import type { TemplateDrawing } from "../../bench/room/template/drawing.ts";
import { faultAt } from "../../errors.ts";
import { MAX_TEMPLATE_PAGES } from "../../limits.ts";
import { type Pdf, pdfOfPages } from "./pdf.ts";
import { BAR_MM, BAR_WORDS, type SheetPoint, SIDE_WORDS, type TemplateSheet, templateSheet } from "./template-sheet.ts";
import { type Tile, type Tiling, tilingFor } from "./tiles.ts";

/** Millimetres. */
const THIN = 0.15;
const LINE = 0.25;
const TEXT = 3;

const write = (page: Pdf, x: number, y: number, words: string) =>
  page.fontSize(TEXT).text(words, x, y, { lineBreak: false });

function cross(page: Pdf, { x, y }: SheetPoint, arm: number): void {
  page
    .moveTo(x - arm, y)
    .lineTo(x + arm, y)
    .moveTo(x, y - arm)
    .lineTo(x, y + arm)
    .stroke();
}

function drawLines(page: Pdf, { lines, circles }: TemplateSheet): void {
  page.lineWidth(LINE);
  for (const { what, points } of lines) {
    if (what === "cavity") page.dash(3, { space: 1.5 });
    page.polygon(...points.map(({ x, y }) => [x, y])).stroke();
    page.undash();
  }
  for (const { centre, radius } of circles) page.circle(centre.x, centre.y, radius).stroke();
}

function drawAxes(page: Pdf, { bridge, width, height }: TemplateSheet): void {
  page.lineWidth(THIN).dash(8, { space: 2 });
  page.moveTo(0, bridge.y).lineTo(width, bridge.y).moveTo(bridge.x, 0).lineTo(bridge.x, height).stroke();
  page.undash();
  write(page, 2, bridge.y - TEXT - 1, "centre line");
  write(page, bridge.x + 1, 1, "bridge line");
}

function drawSheet(page: Pdf, sheet: TemplateSheet, { crosses }: Tiling): void {
  drawLines(page, sheet);
  drawAxes(page, sheet);
  page.lineWidth(THIN);
  for (const { at, text, words } of sheet.named) {
    cross(page, at, 2);
    write(page, words.x, words.y - TEXT, text);
  }
  for (const at of crosses) {
    page.circle(at.x, at.y, 2).stroke();
    cross(page, at, 4);
  }
}

/** The bar and its words, on every page, since every page may be printed another way. */
function drawFoot(page: Pdf, sheet: TemplateSheet, { window, rows, columns }: Tiling, { row, column }: Tile): void {
  const top = window.y + window.height + 3;
  page.rect(window.x, top, BAR_MM, 1.5).fill("black");
  const pages =
    rows * columns > 1 ? ` Row ${row + 1} of ${rows}, column ${column + 1} of ${columns}: lay cross on cross.` : "";
  write(page, window.x, top + 3, `${BAR_WORDS}${pages}`);
  write(page, window.x, top + 8, `${sheet.title}. ${SIDE_WORDS}`);
}

function drawTile(page: Pdf, sheet: TemplateSheet, tiling: Tiling, tile: Tile): void {
  const { window } = tiling;
  page.strokeColor("black").fillColor("black");
  page.save();
  page.rect(window.x, window.y, window.width, window.height).clip();
  page.translate(window.x - tile.x, window.y - tile.y);
  drawSheet(page, sheet, tiling);
  page.restore();
  page.lineWidth(THIN).rect(window.x, window.y, window.width, window.height).stroke("gray");
  drawFoot(page, sheet, tiling, tile);
}

/**
 * The template at 1:1 on A4, in tiles that overlap where it is larger than a page.
 *
 * @throws PresolderError LIMIT_EXCEEDED where it takes too many pages
 */
export async function templatePdf(drawing: TemplateDrawing): Promise<Uint8Array> {
  const sheet = templateSheet(drawing);
  const tiling = tilingFor(sheet);
  const { tiles, page } = tiling;
  if (tiles.length > MAX_TEMPLATE_PAGES)
    throw faultAt(
      "LIMIT_EXCEEDED",
      "format",
      `the drawing takes ${tiles.length} pages of A4; expected at most ${MAX_TEMPLATE_PAGES}; ask for "svg" instead`,
    );
  return pdfOfPages(
    { title: sheet.title, size: page },
    tiles.map((tile) => (pdf: Pdf) => drawTile(pdf, sheet, tiling, tile)),
  );
}
