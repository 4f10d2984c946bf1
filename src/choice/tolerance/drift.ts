import { dielectricOf } from "../../build-file/catalogue/dielectrics.ts";
import type { PartOf } from "../../build-file/schema.ts";

/** °C, the lower first. */
export type CelsiusRange = readonly [from: number, to: number];
/** Least and most, as fractions. */
export type Fractions = readonly [low: number, high: number];

/** Where a cap is marked. */
const MARKED_CELSIUS = 25;

/**
 * What a dielectric lets the capacitance change by at some temperature. Data sheets and EIA-198 bound it over the whole range alone; it is
 * taken to open evenly from 25 °C to the range's ends (a choice, no source), and beyond them not to open further.
 */
export function changeAt(cap: PartOf<"cap">, celsius: number): Fractions {
  if (cap.dielectric === undefined) return [0, 0];
  const { change, from, to } = dielectricOf(cap.dielectric).temperature;
  const end = celsius < MARKED_CELSIUS ? from : to;
  const share = Math.min(1, (celsius - MARKED_CELSIUS) / (end - MARKED_CELSIUS));
  return [change[0] * share, change[1] * share];
}

/** The same over a range of temperatures; null where nothing is known of the cap. */
export function driftOf(cap: PartOf<"cap">, [from, to]: CelsiusRange): Fractions | null {
  if (cap.dielectric === undefined) return null;
  const [cold, hot] = [changeAt(cap, from), changeAt(cap, to)];
  return [Math.min(cold[0], hot[0]), Math.max(cold[1], hot[1])];
}
