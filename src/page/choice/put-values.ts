import { showQuantity } from "../../build-file/show-quantity.ts";
import type { FoundAnswer } from "../../contract/search.ts";
import { setAt } from "../state/paths.ts";
import type { BuildSource } from "../state/reading.ts";

export type FoundValue = FoundAnswer["values"][number];

export const DIMENSIONS = { farads: "capacitance", ohms: "resistance", metres: "length" } as const;

/** "22n": as one would write it into the field. */
export function written(value: number, unit: "farads" | "ohms"): string {
  return showQuantity(value, DIMENSIONS[unit]).replace("Ω", "").replace(/\s/g, "");
}

/** A guard with the values found for its parts. What a meter read on a pot was another pot's, and goes. */
export function withFoundValues(source: BuildSource, values: readonly FoundValue[]): BuildSource {
  return values.reduce((next, { name, unit, value }) => {
    if (value === null || !(name in next.parts) || (unit !== "farads" && unit !== "ohms")) return next;
    const unmeasured = setAt(next, ["parts", name, "measured"], undefined);
    return setAt(unmeasured, ["parts", name, DIMENSIONS[unit]], written(value, unit));
  }, source);
}

const FITTED = ["resistance", "inductance", "capacitance", "loss"];

/** A guard with a coil's fitted values in place of all its electrical ones: a loss that was not found is none. */
export function withFittedCoil(
  source: BuildSource,
  [pickup, coil]: readonly [string, string],
  fitted: Readonly<Record<string, unknown>>,
): BuildSource {
  return FITTED.reduce((next, key) => setAt(next, ["parts", pickup, "coils", coil, key], fitted[key]), source);
}
