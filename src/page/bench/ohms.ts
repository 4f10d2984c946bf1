import { parseQuantity } from "../../build/quantity.ts";
import { showQuantity } from "../fields/show-quantity.ts";
import type { MeterReading } from "./bench-answer.ts";

export function showOhms(ohms: number | null): string {
  return ohms === null ? "open" : showQuantity(Number(ohms.toPrecision(3)), "resistance");
}

/** "5.79 kΩ to 6.13 kΩ", "open", "under 1 Ω". */
export function rangeText({ low, high }: Pick<MeterReading, "low" | "high">): string {
  if (low === null && high === null) return "open";
  if (high !== null && high <= 1) return "under 1 Ω";
  return `${showOhms(low)} to ${showOhms(high)}`;
}

const OPEN_WORDS = ["open", "ol", "o.l", "o.l.", "∞", "infinite"];

/** What a meter showed: ohms, null for an open circuit, undefined for nothing written. @throws QuantityError */
export function readOhms(text: string): number | null | undefined {
  const written = text.trim();
  if (written === "") return undefined;
  if (OPEN_WORDS.includes(written.toLowerCase())) return null;
  return parseQuantity(written, "resistance").value;
}
