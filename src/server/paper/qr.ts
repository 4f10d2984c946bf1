import { encode } from "uqr";
import type { Pdf } from "./pdf.ts";

/** Modules of blank margin that a reader needs about the symbol (ISO/IEC 18004). */
const QUIET_ZONE = 4;

export interface Symbol {
  /** Modules along a side, blank margin included. */
  readonly size: number;
  readonly rows: readonly (readonly boolean[])[];
}

/** A QR code symbol (ISO/IEC 18004) with error correction level M: a fold or a smear through a seventh of it does no harm. */
export function symbolOf(text: string): Symbol {
  const { size, data } = encode(text, { ecc: "M", border: QUIET_ZONE });
  return { size, rows: data };
}

/** @param side millimetres, blank margin included */
export function drawSymbol(page: Pdf, { size, rows }: Symbol, [x, y]: readonly [number, number], side: number): void {
  const module = side / size;
  page.rect(x, y, side, side).fill("#ffffff");
  for (const [row, modules] of rows.entries()) {
    let from = 0;
    while (from < size) {
      if (!modules[from]) {
        from += 1;
        continue;
      }
      let to = from;
      while (modules[to]) to += 1;
      page.rect(x + from * module, y + row * module, (to - from) * module, module);
      from = to;
    }
  }
  page.fill("#000000");
}
