import { parseQuantity, QuantityError } from "../../build-file/quantity.ts";
import type { Dimension } from "../../build-file/units.ts";
import { faultAt } from "../../errors.ts";
import { MAX_CANDIDATES } from "../../limits.ts";
import { preferredValues, type SeriesName } from "./e-series.ts";

/** Values to choose from as a person writes them: a list, or a series between two ends. */
export interface Choices {
  readonly values?: readonly (number | string)[] | undefined;
  readonly series?: SeriesName | undefined;
  readonly from?: number | string | undefined;
  readonly to?: number | string | undefined;
}

/** Where nothing is said: customary spans and values (common practice, no source). */
export const USUAL_CHOICES = {
  toneCaps: { series: "E6", from: "1n", to: "100n" },
  bleedCaps: { series: "E12", from: "100p", to: "3.3n" },
  bleedResistors: { series: "E12", from: "47k", to: "470k" },
  resistors: { series: "E12", from: "1k", to: "4.7M" },
  pots: { values: ["100k", "250k", "300k", "500k", "1M"] },
  cables: { values: ["1m", "2m", "3m", "4m", "5m", "6m", "8m", "10m"] },
} as const satisfies Record<string, Choices>;

/** Of a track, at half rotation. */
const USUAL_TAPERS = [0.1, 0.15, 0.2, 0.3, 0.35, 0.5];

function readValue(written: number | string, dimension: Dimension, path: string): number {
  try {
    const { value } = parseQuantity(written, dimension);
    if (value > 0) return value;
    throw faultAt("REQUEST_INVALID", path, `is ${value}; expected more than 0`);
  } catch (error) {
    if (error instanceof QuantityError) throw faultAt("REQUEST_INVALID", path, error.message);
    throw error;
  }
}

/**
 * The values to try, in SI units; the usual ones where none of the choices is given.
 * @param path of the choices in the request, for faults
 * @throws PresolderError REQUEST_INVALID naming the field at fault
 */
export function candidates(given: Choices, usual: Choices, dimension: Dimension, path: string): number[] {
  const isSaid = [given.values, given.series, given.from, given.to].some((field) => field !== undefined);
  const { values, series, from, to } = isSaid ? given : usual;
  if (values) return values.map((value, i) => readValue(value, dimension, `${path}.values.${i}`));
  if (series === undefined || from === undefined || to === undefined)
    throw faultAt("REQUEST_INVALID", path, 'expected either "values" or all of "series", "from" and "to"');
  const [low, high] = [readValue(from, dimension, `${path}.from`), readValue(to, dimension, `${path}.to`)];
  const found = preferredValues(series, low, high);
  if (found.length > 0 && found.length <= MAX_CANDIDATES) return found;
  throw faultAt("REQUEST_INVALID", path, `${series} has ${found.length} values there; expected 1 to ${MAX_CANDIDATES}`);
}

/**
 * Fractions of a track between 0 and 1; the usual tapers where none is given.
 * @throws PresolderError REQUEST_INVALID naming the value at fault
 */
export function fractions(values: readonly (number | string)[] = USUAL_TAPERS, path: string): number[] {
  return values.map((value, i) => {
    const fraction = Number(value);
    if (fraction > 0 && fraction < 1) return fraction;
    const message = `"${value}" is no fraction; expected a number between 0 and 1`;
    throw faultAt("REQUEST_INVALID", `${path}.values.${i}`, message);
  });
}
