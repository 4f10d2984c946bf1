import { guardCodeOf } from "../../bench/passport/guard-code.ts";
import type { Passport } from "../../bench/passport/passport.ts";
import { type Block, type Column, fittingSize, writeBlocks } from "./blocks.ts";
import type { PaperPassport } from "./passport-page.ts";
import { pdfOf } from "./pdf.ts";
import { drawSymbol } from "./qr.ts";

/** Millimetres: it goes into a cavity, or under the guard. */
const LABEL = { width: 60, height: 40 } as const;
const MARGIN = 2;
/** Four dots of a printer of 300 to the inch; a phone reads that from a hand's breadth. Common practice, no source. */
const LEAST_MODULE = 0.34;
const USUAL_MODULE = 0.42;
const SIZES = [1.25, 2.2] as const;

/** What goes without saying in so little room. */
const USUAL = ["parallel", "in phase", "hum cancelling", "hum partly cancelling", "hum not cancelling"];

function inShort(sounds: string): string {
  const [pickups, ...words] = sounds.split(", ");
  return [pickups, ...words.filter((word) => !USUAL.includes(word))].join(", ");
}

const CONTROLS = /\b(pot|cap|resistor)\b/;

function labelBlocks({ title, guitar, date, positions, parts }: Passport, hasCode: boolean): Block[] {
  const values = parts.filter(({ what }) => CONTROLS.test(what)).map(({ name, what }) => `${name}: ${what}`);
  const facts = [guitar, date].filter((text) => text !== null);
  return [
    {
      heading: title || "Guard",
      lines: [
        ...facts.map((text) => ["", text] as const),
        ...positions.map(({ position, sounds }) => ["", `${position}: ${inShort(sounds)}`] as const),
        ...values.map((text) => ["", text] as const),
        ...(hasCode ? [] : [["", "The guard's link is too long for a code of this size."] as const]),
      ],
    },
  ];
}

/** A label of 60 × 40 mm. A guard whose link makes a code too fine for it is labelled in words alone. */
export function passportLabel({ passport, link }: PaperPassport): Promise<Uint8Array> {
  return pdfOf({ title: `Label: ${passport.title}`, size: LABEL }, (page) => {
    const symbol = guardCodeOf(link);
    const inner = LABEL.height - 2 * MARGIN;
    const side = Math.min(inner, symbol.size * USUAL_MODULE);
    const hasCode = side / symbol.size >= LEAST_MODULE;
    page
      .lineWidth(0.15)
      .rect(0.3, 0.3, LABEL.width - 0.6, LABEL.height - 0.6)
      .stroke("#999999");
    if (hasCode) drawSymbol(page, symbol, [LABEL.width - MARGIN - side, MARGIN], side);
    const width = LABEL.width - 2 * MARGIN - (hasCode ? side : 0);
    const column: Column = { x: MARGIN, y: MARGIN, width, height: inner, names: 0.3 };
    const blocks = labelBlocks(passport, hasCode);
    writeBlocks(page, column, blocks, fittingSize(page, [[column, blocks]], SIZES));
  });
}
