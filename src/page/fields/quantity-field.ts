import { parseQuantity, QuantityError } from "../../build-file/quantity.ts";
import { showQuantity } from "../../build-file/show-quantity.ts";
import type { Dimension } from "../../build-file/units.ts";
import { h } from "../dom/element.ts";
import { assembleField, type Commit, type Field, type Labelled } from "./field.ts";

/** How a quantity as written is read: "= 22 nF ±10 %", or nothing where it says the same or cannot be read. */
export function readingText(text: string, dimension: Dimension): string {
  if (text.trim() === "") return "";
  try {
    const { value, tolerance } = parseQuantity(text, dimension);
    const spread = tolerance === undefined ? "" : ` ±${Number((tolerance * 100).toFixed(2))} %`;
    return `= ${showQuantity(value, dimension)}${spread}`;
  } catch (error) {
    if (error instanceof QuantityError) return "";
    throw error;
  }
}

/** A value with a unit, typed as the trade writes it; what it is read as stands beside it while typing. */
export function quantityField(spec: Labelled & { readonly dimension: Dimension }, commit: Commit): Field {
  const input = h("input", { type: "text", autocomplete: "off", spellcheck: "false", size: 9 });
  const reading = h("span", { class: "reading", "aria-live": "polite" });
  const read = () => {
    reading.textContent = readingText(input.value, spec.dimension);
  };
  input.addEventListener("input", read);
  input.addEventListener("change", () => {
    const text = input.value.trim();
    commit(spec.path, text === "" ? undefined : text);
  });
  const field = assembleField(spec, {
    control: input,
    beside: reading,
    toControl: (value) => {
      const text = typeof value === "number" ? showQuantity(value, spec.dimension) : String(value ?? "");
      if (document.activeElement !== input || input.value.trim() !== text) input.value = text;
      read();
    },
  });
  return {
    ...field,
    showFault: (message) => {
      field.showFault(message);
      // "= -5 F" above what is wrong with it would look like a value taken over.
      if (message !== undefined) reading.textContent = "";
    },
  };
}
