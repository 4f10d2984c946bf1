import { h } from "../dom/element.ts";
import type { Commit, Field } from "../fields/field.ts";
import { quantityField } from "../fields/quantity-field.ts";

/** What hangs on the jack, and the scale: not parts, but they shape the sound all the same. */
export function createSurroundings(commit: Commit): { element: HTMLElement; fields: readonly Field[] } {
  const fields = [
    quantityField({ path: ["cable", "length"], label: "Cable length", dimension: "length" }, commit),
    quantityField(
      { path: ["cable", "capacitance"], label: "Cable, a metre", dimension: "capacitancePerLength" },
      commit,
    ),
    quantityField({ path: ["load", "resistance"], label: "Input resistance", dimension: "resistance" }, commit),
    quantityField({ path: ["load", "capacitance"], label: "Input capacitance", dimension: "capacitance" }, commit),
    quantityField({ path: ["strings", "scale"], label: "Scale length", dimension: "length" }, commit),
  ];
  const element = h(
    "article",
    { class: "part-card" },
    h("header", {}, h("h3", {}, "Cable, amplifier and strings")),
    h(
      "div",
      { class: "field-row" },
      fields.map((field) => field.element),
    ),
  );
  return { element, fields };
}
