import { shortQuantity, showQuantity } from "../../../build-file/show-quantity.ts";
import { leadsLeft, type OwnMeter } from "./own-meter.ts";
import { digitOhms, lastMark, overFrom, rangeFor } from "./range-for.ts";

/** What stands on a meter. */
export interface Display {
  /** The end of the range in ohms, of a needle the middle of the scale: to be set, or found by the meter. */
  readonly range: number;
  /** "7.42", "OL", "1" at the left, "∞". */
  readonly display: string;
  /** The display's own unit; empty where it shows no number. */
  readonly unit: "" | "Ω" | "kΩ" | "MΩ";
  /** The whole: "7.42 on the 20 kΩ range". */
  readonly text: string;
}

/** What a reading looks like on the person's own meter. */
export interface OnMeter extends Display {
  /** Seconds until it stands still, where that is longer than a person waits anyway; else null. */
  readonly wait: number | null;
}

/** What a meter shows above the end of its range. */
export function overSign({ ranging, counts }: Pick<OwnMeter, "ranging" | "counts">): string {
  if (ranging === "needle") return "∞";
  // Three and a half digits set by hand: the half digit alone stays lit (common practice, no source).
  return ranging === "manual" && counts === 2000 ? "1" : "OL";
}

const UNITS = [
  [1e6, "MΩ"],
  [1e3, "kΩ"],
  [1, "Ω"],
] as const;

/** Whether a 1 that somebody wrote down is the lone 1 of a display over its range: no such ohms could stand there. */
export function isLoneOne(meter: OwnMeter, range: number | undefined, ohms: number | null): boolean {
  return ohms === 1 && range !== undefined && overSign(meter) === "1" && digitOhms(meter, range) > 1;
}

/** "the 20 kΩ range", "the ×100 scale". */
export function rangeWords({ ranging, ranges }: OwnMeter, range: number): string {
  if (ranging === "needle") return `the ×${shortQuantity(range / ranges[0]!)} scale`;
  return `the ${showQuantity(range, "resistance")} range`;
}

function overText(meter: OwnMeter, range: number): string {
  const { ranging } = meter;
  if (ranging === "auto") return "OL";
  const sign = overSign(meter);
  if (ranging === "needle") return `∞: the needle stays at rest on ${rangeWords(meter, range)}`;
  return `${sign === "1" ? "1 alone at the left" : sign} on ${rangeWords(meter, range)}`;
}

/** Two figures are what the eye makes of a needle. */
const NEEDLE_FIGURES = 2;

function onNeedle(meter: OwnMeter, range: number, ohms: number): Display {
  const [lowest] = meter.ranges as [number];
  const shown = String(Number(((ohms * lowest) / range).toPrecision(NEEDLE_FIGURES)));
  return { range, display: shown, unit: "Ω", text: `about ${shown} on ${rangeWords(meter, range)}` };
}

/** What the meter shows of a resistance, its own error left aside and its leads' ohms added. @param ohms null where open */
export function displayOf(meter: OwnMeter, ohms: number | null): Display {
  const shown = ohms === null ? null : ohms + leadsLeft(meter);
  const range = meter.range ?? rangeFor(meter, shown);
  const end = Math.min(meter.ranging === "needle" ? lastMark(range) : overFrom(meter, range), meter.openFrom);
  if (shown === null || shown >= end)
    return { range, display: overSign(meter), unit: "", text: overText(meter, range) };
  if (meter.ranging === "needle") return onNeedle(meter, range, shown);
  const [scale, unit] = UNITS.find(([least]) => range >= least) ?? UNITS[2];
  const digit = digitOhms(meter, range);
  const decimals = Math.max(0, Math.round(-Math.log10(digit / scale) - 1e-9));
  const display = ((Math.round(shown / digit) * digit) / scale).toFixed(decimals);
  const text = meter.ranging === "auto" ? `${display} ${unit}` : `${display} on ${rangeWords(meter, range)}`;
  return { range, display, unit, text };
}
