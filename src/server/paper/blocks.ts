import type { Pdf } from "./pdf.ts";

/** A heading with lines under it, each a name and what is said of it; a line without a name takes the whole width. */
export interface Block {
  readonly heading: string;
  readonly lines: readonly (readonly [name: string, text: string])[];
}

/** Millimetres. */
export interface Column {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** The name's share of the width. */
  readonly names: number;
}

const LINE_GAP = 0.25;
const BLOCK_GAP = 0.9;
const HEADING = 1.15;
const UNDER_HEADING = 0.4;
const GUTTER = 2;

function widthsOf({ width, names }: Column, name: string): readonly [number, number] {
  return name === "" ? [0, width] : [width * names - GUTTER, width * (1 - names)];
}

function lineHeight(page: Pdf, column: Column, [name, text]: Block["lines"][number]): number {
  const [forName, forText] = widthsOf(column, name);
  const left = name === "" ? 0 : page.heightOfString(name, { width: forName });
  return Math.max(left, page.heightOfString(text || " ", { width: forText }));
}

function headingHeight(page: Pdf, { width }: Column, heading: string, size: number): number {
  page.font("bold").fontSize(size * HEADING);
  return page.heightOfString(heading, { width }) + size * UNDER_HEADING;
}

/** The height that blocks take in a font of so many millimetres. */
export function heightOf(page: Pdf, column: Column, blocks: readonly Block[], size: number): number {
  const headings = blocks.map(({ heading }) => headingHeight(page, column, heading, size) + size * BLOCK_GAP);
  page.font("plain").fontSize(size);
  const lines = blocks.flatMap((block) => block.lines).map((line) => lineHeight(page, column, line) + size * LINE_GAP);
  return [...headings, ...lines].reduce((sum, height) => sum + height, 0);
}

const INK = "#000000";
const SOFT = "#444444";

/** Writes blocks one under another; what does not fit is counted in the last line instead. */
export function writeBlocks(page: Pdf, column: Column, blocks: readonly Block[], size: number): void {
  const end = column.y + column.height;
  let { y } = column;
  for (const { heading, lines } of blocks) {
    if (y + size * 4 > end) return;
    const under = headingHeight(page, column, heading, size);
    page
      .font("bold")
      .fontSize(size * HEADING)
      .fillColor(INK)
      .text(heading, column.x, y, { width: column.width });
    y += under;
    page.font("plain").fontSize(size);
    for (const [index, line] of lines.entries()) {
      const height = lineHeight(page, column, line);
      if (y + height > end) {
        page
          .fillColor(SOFT)
          .text(`and ${lines.length - index} more`, column.x, y - size * LINE_GAP, { lineBreak: false });
        return;
      }
      const [name, text] = line;
      const [forName, forText] = widthsOf(column, name);
      if (name !== "") page.fillColor(SOFT).text(name, column.x, y, { width: forName });
      const left = name === "" ? column.x : column.x + forName + GUTTER;
      page.fillColor(INK).text(text, left, y, { width: forText });
      y += height + size * LINE_GAP;
    }
    y += size * BLOCK_GAP;
  }
}

/** The largest font, in millimetres, in which every column's blocks fit; the smallest allowed where none does. */
export function fittingSize(
  page: Pdf,
  columns: readonly (readonly [Column, readonly Block[]])[],
  [least, most]: readonly [number, number],
): number {
  const STEP = 0.1;
  for (let size = most; size > least; size -= STEP) {
    if (columns.every(([column, blocks]) => heightOf(page, column, blocks, size) <= column.height)) return size;
  }
  return least;
}
