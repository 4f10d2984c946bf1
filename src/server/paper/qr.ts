import type { GuardCode } from "../../bench/passport/guard-code.ts";
import type { Pdf } from "./pdf.ts";

/** @param side millimetres, blank margin included */
export function drawSymbol(
  page: Pdf,
  { size, rows }: GuardCode,
  [x, y]: readonly [number, number],
  side: number,
): void {
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
