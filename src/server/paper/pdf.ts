import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import PDFDocument from "pdfkit";

/** Points a millimetre: PDF counts 72 to the inch. */
export const POINTS_PER_MM = 72 / 25.4;

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

/** One page, drawn in millimetres from its upper left corner; the fonts are called "plain" and "bold". */
export function pdfOf({ title, size }: Sheet, draw: (page: Pdf) => void): Promise<Uint8Array> {
  const page = new PDFDocument({
    size: [size.width * POINTS_PER_MM, size.height * POINTS_PER_MM],
    margin: 0,
    info: { Title: title, Producer: "Presolder", Creator: "Presolder", CreationDate: NO_DATE },
  });
  const chunks: Uint8Array[] = [];
  return new Promise((done, failed) => {
    page.on("data", (chunk: Uint8Array) => chunks.push(chunk));
    page.on("end", () => done(Buffer.concat(chunks)));
    page.on("error", failed);
    for (const [name, file] of Object.entries(FONTS)) page.registerFont(name, fontFile(file));
    page.font("plain").scale(POINTS_PER_MM);
    draw(page);
    page.end();
  });
}
