import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import PDFDocument from "pdfkit";

/** Points a millimetre: PDF counts 72 to the inch. */
const POINTS_PER_MM = 72 / 25.4;

/** A4, upright, in millimetres (ISO 216). */
export const A4 = { width: 210, height: 297 } as const;

export interface Sheet {
  readonly title: string;
  /** Millimetres. */
  readonly size: { readonly width: number; readonly height: number };
}

export type Pdf = PDFKit.PDFDocument;

/** The fonts that every PDF reader has know no Ω. */
const FONTS = { plain: "DejaVuSans.ttf", bold: "DejaVuSans-Bold.ttf" } as const;

const { resolve } = createRequire(import.meta.url);
const fontFile = (name: string) => readFileSync(resolve(`dejavu-fonts-ttf/ttf/${name}`));

/** The same drawing makes the same file, whenever it is made. */
const NO_DATE = new Date(0);

type Draw = (page: Pdf) => void;

/** Pages of one size, each drawn in millimetres from its upper left corner; the fonts are called "plain" and "bold". */
export function pdfOfPages({ title, size }: Sheet, draws: readonly Draw[]): Promise<Uint8Array> {
  const paper = { size: [size.width * POINTS_PER_MM, size.height * POINTS_PER_MM] as [number, number], margin: 0 };
  const pdf = new PDFDocument({
    ...paper,
    autoFirstPage: false,
    info: { Title: title, Producer: "Presolder", Creator: "Presolder", CreationDate: NO_DATE },
  });
  const chunks: Uint8Array[] = [];
  return new Promise((done, failed) => {
    pdf.on("data", (chunk: Uint8Array) => chunks.push(chunk));
    // A worker's answer changes hands with its memory, so it must own it: Node may lay a Buffer into a pool that others share.
    pdf.on("end", () => done(new Uint8Array(Buffer.concat(chunks))));
    pdf.on("error", failed);
    for (const [name, file] of Object.entries(FONTS)) pdf.registerFont(name, fontFile(file));
    for (const draw of draws) {
      pdf.addPage(paper).font("plain").scale(POINTS_PER_MM);
      draw(pdf);
    }
    pdf.end();
  });
}

/** One page. */
export function pdfOf(sheet: Sheet, draw: Draw): Promise<Uint8Array> {
  return pdfOfPages(sheet, [draw]);
}
