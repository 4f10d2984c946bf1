import { curvesCsv } from "../../csv.ts";
import { FREQUENCIES_HZ } from "./frequencies.ts";
import type { Picture } from "./picture.ts";

/** A table of true levels in dB, as the service writes curves too. */
export function curveCsv({ family }: Picture): string {
  const traces = [family.current, ...family.behind];
  return curvesCsv(
    FREQUENCIES_HZ,
    traces.map(({ name, magnitude }) => ({ name, magnitude })),
  );
}
