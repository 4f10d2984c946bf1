import { parseQuantity, QuantityError } from "../../../build-file/quantity.ts";
import { showQuantity } from "../../../build-file/show-quantity.ts";
import type { Dimension } from "../../../build-file/units.ts";
import { MAX_DRAWER_QUANTITY, MAX_PRICE } from "../../../limits.ts";
import type { FormField } from "../../fields/form-fields.ts";

/** What is wrong with a value as it was typed; undefined where nothing is. */
export function quantityFault(text: string, dimension: Dimension): string | undefined {
  try {
    return parseQuantity(text, dimension).value > 0 ? undefined : "expected more than 0";
  } catch (error) {
    if (error instanceof QuantityError) return error.message;
    throw error;
  }
}

/** Tracks under this are no guitar's; a number without a unit is then meant in kilohms (common practice, no source). */
const LEAST_TRACK_OHMS = 10e3;

/** What is wrong with a pot's track as it was typed. */
export function trackFault(text: string): string | undefined {
  const fault = quantityFault(text, "resistance");
  if (fault !== undefined || parseQuantity(text, "resistance").value >= LEAST_TRACK_OHMS) return fault;
  if (!/^[\d.]+$/.test(text)) return undefined;
  return `"${text}" alone is ${text} ohms; write the unit: "${text}k", or "${text}R" if so little is meant`;
}

/** "21.3n, 22.1n": values apart by commas, semicolons or spaces before a digit. */
export const measuredIn = (text: string) => text.split(/[,;]\s*|\s+(?=\d)/).filter((value) => value.trim() !== "");

/** What is measured this many times over or under what is marked is a slip, or another part (a choice). */
const FAR_FROM_MARKED = 3;

/** A reading that cannot be of a part so marked; nothing where the marked value itself cannot be read. */
function farFault(values: readonly string[], dimension: Dimension, marked: string | number): string | undefined {
  if (typeof marked === "string" && quantityFault(marked, dimension) !== undefined) return undefined;
  const value = parseQuantity(marked, dimension).value;
  const far = values.find((each) => {
    const ratio = parseQuantity(each, dimension).value / value;
    return ratio > FAR_FROM_MARKED || ratio < 1 / FAR_FROM_MARKED;
  });
  return far && `"${far}" is far from the ${showQuantity(value, dimension)} marked; expected a reading of such a part`;
}

/**
 * What is wrong with what was measured of some parts.
 * @param most that are to be measured
 * @param marked what they are sold as
 */
export function measuredFault(
  values: readonly string[],
  dimension: Dimension,
  most: number,
  marked: string | number,
): string | undefined {
  const wrong = values.map((each) => quantityFault(each, dimension)).find((fault) => fault !== undefined);
  if (wrong !== undefined || values.length <= most) return wrong ?? farFault(values, dimension, marked);
  return `${values.length} values for ${most} ${most === 1 ? "part" : "parts"}; expected one a part at most`;
}

export function countFault(text: string, least: number): string | undefined {
  const count = Number(text);
  const isCount = text !== "" && Number.isInteger(count) && count >= least && count <= MAX_DRAWER_QUANTITY;
  return isCount ? undefined : `expected a whole number from ${least} to ${MAX_DRAWER_QUANTITY}`;
}

/** A price as it was typed; a comma before one or two last digits is a decimal one. */
export const priceIn = (text: string): number => Number(text.replace(/^(\d+),(\d{1,2})$/, "$1.$2"));

export function priceFault(text: string): string | undefined {
  const price = priceIn(text);
  return text === "" || (price >= 0 && price <= MAX_PRICE) ? undefined : "expected a plain number, such as 4.50";
}

/** Says what is wrong with some fields. @returns whether nothing is */
export function areRight(faults: readonly (readonly [FormField, string | undefined])[]): boolean {
  for (const [field, fault] of faults) field.showFault(fault);
  return faults.every(([, fault]) => fault === undefined);
}
