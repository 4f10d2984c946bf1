import { copperFactor } from "../meter/copper.ts";
import type { Labelling } from "./weigh.ts";

/** Ohms of each coil at 20 °C. */
export function ohmsOfCoils({ structure, ohms }: Labelling, temperature: number): number[] {
  const factor = copperFactor(temperature);
  if (structure.coils === 1) return [Math.exp(ohms.mean) / factor];
  return [1, -1].map((side) => Math.exp(ohms.mean + (side * ohms.difference) / 2) / factor);
}
