import { parseQuantity, QuantityError } from "../../build-file/quantity.ts";
import type { Dimension } from "../../build-file/units.ts";

/** SI number of a quantity, however it is written; undefined where none is there or it cannot be read. */
export function readQuantity(dimension: Dimension, written: unknown): number | undefined {
  if (typeof written !== "string" && typeof written !== "number") return undefined;
  try {
    return parseQuantity(written, dimension).value;
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}
