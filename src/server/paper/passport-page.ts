import { guardCodeOf } from "../../bench/passport/guard-code.ts";
import type { Passport } from "../../bench/passport/passport.ts";
import type { ReadDrawing } from "../../contract/bench/passport.ts";
import { type Column, fittingSize, writeBlocks } from "./blocks.ts";
import { drawOnPaper } from "./drawing-on-paper.ts";
import { findingBlocks, partBlocks } from "./passport-blocks.ts";
import { A4, type Pdf, pdfOf } from "./pdf.ts";
import { drawSymbol } from "./qr.ts";

export interface PaperPassport {
  readonly passport: Passport;
  /** What the code on the paper holds. */
  readonly link: string;
  readonly drawing?: ReadDrawing | undefined;
}

const MARGIN = 12;
const INNER = A4.width - 2 * MARGIN;
const CODE = 36;
const DRAWING = 92;
const GAP = 4;
/** Of print that is still read without a glass, and of print that looks at home on a page. Millimetres. */
const SIZES = [1.7, 3] as const;
const FOOT = 6;
const TITLE_HEIGHT = 16;
/** A long title is set smaller before a word of it is left out. */
const TITLE_SIZES = [6, 5, 4.2, 3.4, 2.8];
const FACTS_HEIGHT = CODE - TITLE_HEIGHT - 2;

function writeTitle(page: Pdf, title: string, width: number): void {
  page.font("bold").fillColor("#000000");
  const fits = (size: number) => page.fontSize(size).heightOfString(title, { width }) <= TITLE_HEIGHT;
  const size = TITLE_SIZES.find(fits) ?? TITLE_SIZES.at(-1)!;
  page.fontSize(size).text(title, MARGIN, MARGIN, { width, height: TITLE_HEIGHT, ellipsis: true });
}

function writeHead(page: Pdf, { passport: { title, guitar, date, temperature }, link }: PaperPassport): void {
  const width = INNER - CODE - GAP;
  writeTitle(page, title || "Guard", width);
  const facts = [guitar && `In: ${guitar}`, date && `Date: ${date}`, `Measured at ${temperature} °C`].filter(Boolean);
  page
    .font("plain")
    .fontSize(3.4)
    .text(facts.join("\n"), MARGIN, MARGIN + TITLE_HEIGHT + 1, {
      width,
      height: FACTS_HEIGHT,
      lineGap: 0.6,
      ellipsis: true,
    });
  drawSymbol(page, guardCodeOf(link), [A4.width - MARGIN - CODE, MARGIN - GAP], CODE);
}

/** One page of A4. */
export function passportPage(paper: PaperPassport): Promise<Uint8Array> {
  const { passport, drawing } = paper;
  return pdfOf({ title: `Passport: ${passport.title}`, size: A4 }, (page) => {
    writeHead(page, paper);
    const top = MARGIN + CODE;
    const area = { x: MARGIN, y: top, width: INNER, height: DRAWING };
    const y = top + (drawing ? drawOnPaper(page, drawing, area) + GAP : 0);
    const height = A4.height - MARGIN - FOOT - y;
    const width = (INNER - GAP) / 2;
    const left: Column = { x: MARGIN, y, width, height, names: 0.32 };
    const right: Column = { x: MARGIN + width + GAP, y, width, height, names: 0.34 };
    const columns = [[left, partBlocks(passport)] as const, [right, findingBlocks(passport)] as const];
    const size = fittingSize(page, columns, SIZES);
    for (const [column, blocks] of columns) writeBlocks(page, column, blocks, size);
    page
      .font("plain")
      .fontSize(2.4)
      .fillColor("#444444")
      .text(
        "Unplug the guitar from the amplifier before the guard is opened. Readings are taken with nothing plugged in.",
        MARGIN,
        A4.height - MARGIN - 2.4,
        { lineBreak: false },
      );
  });
}
