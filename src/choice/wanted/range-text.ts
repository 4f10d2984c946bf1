import { showQuantity } from "../../build-file/show-quantity.ts";
import { FIGURES, type FigureName, type Range } from "./figures.ts";

/** "4.2 kHz", "-3.4 dB", "2". */
export function figureText(figure: FigureName, value: number | null): string {
  if (value === null) return "none";
  const { unit } = FIGURES[figure];
  if (unit === "Hz") return showQuantity(value, "frequency", 3);
  const number = unit === "%" || unit === "pickups" ? value.toFixed(0) : Number(value.toFixed(1)).toString();
  const shown = number.replace("-", "−");
  return unit === "pickups" ? shown : `${shown} ${unit}`;
}

/** "from 4 kHz to 7.5 kHz", "at least 4 dB", "at most −10 dB". */
export function rangeText({ figure, low, high }: Range): string {
  if (low !== undefined && high !== undefined)
    return low === high ? figureText(figure, low) : `from ${figureText(figure, low)} to ${figureText(figure, high)}`;
  if (low !== undefined) return `at least ${figureText(figure, low)}`;
  return high === undefined ? "anything" : `at most ${figureText(figure, high)}`;
}
