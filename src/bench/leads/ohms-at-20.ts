import { copperFactor } from "../meter/copper.ts";
import { expectedOhms } from "./coil-ohms.ts";
import type { Labelling } from "./weigh.ts";

/** Ohms of each coil at 20 °C. */
export function ohmsOfCoils({ structure, ohms }: Labelling, temperature: number): number[] {
  const factor = copperFactor(temperature);
  if (structure.coils === 1) return [Math.exp(ohms.mean) / factor];
  return [1, -1].map((side) => Math.exp(ohms.mean + (side * ohms.difference) / 2) / factor);
}

/** Beyond this a coil's resistance is a guess by how coils usually are. */
const MEASURED_WITHIN = 0.03;

/** By coil: the relative standard error of its resistance. */
export function errorsOfCoils({ structure, ohms }: Labelling): number[] {
  const ways = ["first", "second"] as const;
  return ways.slice(0, structure.coils).map((way) => expectedOhms(ohms, way, structure.coils).deviation);
}

/** Coils that are whole and whose resistance nothing measured tells. */
export function unmeasuredCoils(labelling: Labelling): number[] {
  return errorsOfCoils(labelling).flatMap((error, coil) =>
    error > MEASURED_WITHIN && !labelling.structure.broken[coil] ? [coil] : [],
  );
}
