import { parseQuantity, QuantityError } from "../../../build-file/quantity.ts";
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

/** "21.3n, 22.1n": values apart by commas, semicolons or spaces before a digit. */
export const measuredIn = (text: string) => text.split(/[,;]\s*|\s+(?=\d)/).filter((value) => value.trim() !== "");

/** @param most that are to be measured */
export function measuredFault(values: readonly string[], dimension: Dimension, most: number): string | undefined {
  const wrong = values.map((each) => quantityFault(each, dimension)).find((fault) => fault !== undefined);
  if (wrong !== undefined || values.length <= most) return wrong;
  return `${values.length} values for ${most} ${most === 1 ? "part" : "parts"}; expected one a part at most`;
}

export function countFault(text: string, least: number): string | undefined {
  const count = Number(text);
  const isCount = text !== "" && Number.isInteger(count) && count >= least && count <= MAX_DRAWER_QUANTITY;
  return isCount ? undefined : `expected a whole number from ${least} to ${MAX_DRAWER_QUANTITY}`;
}

export function priceFault(text: string): string | undefined {
  const price = Number(text);
  return text === "" || (price >= 0 && price <= MAX_PRICE) ? undefined : "expected a plain number, such as 4.50";
}

/** Says what is wrong with some fields. @returns whether nothing is */
export function areRight(faults: readonly (readonly [FormField, string | undefined])[]): boolean {
  for (const [field, fault] of faults) field.showFault(fault);
  return faults.every(([, fault]) => fault === undefined);
}
