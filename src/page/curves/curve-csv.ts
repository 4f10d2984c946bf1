import { FREQUENCIES_HZ } from "./curve-cache.ts";
import type { Picture } from "./picture.ts";

const DIGITS = 4;

/** A table of true levels in dB, a row a frequency and a column a curve (RFC 4180). */
export function curveCsv({ family }: Picture): string {
  const traces = [family.current, ...family.behind];
  const header = ["frequency_hz", ...traces.map((trace) => `${trace.name.replaceAll(" ", "_")}_db`)];
  const rows = Array.from(FREQUENCIES_HZ, (hertz, index) => [
    hertz.toFixed(2),
    ...traces.map((trace) => trace.curve.magnitude[index]!.toFixed(DIGITS)),
  ]);
  return [header, ...rows].map((row) => row.join(",")).join("\r\n");
}
