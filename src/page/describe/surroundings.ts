import { h } from "../dom/element.ts";
import type { Commit, Field } from "../fields/field.ts";
import { quantityField } from "../fields/quantity-field.ts";
import { kindChoice } from "./kind-choice.ts";
import { CABLE_DIMENSIONS, CABLES, LOAD_DIMENSIONS, LOADS } from "./surrounding-kinds.ts";

function loadFields(commit: Commit): Field[] {
  return [
    kindChoice(
      {
        path: ["load"],
        label: "Plugged into",
        kinds: LOADS,
        dimensions: LOAD_DIMENSIONS,
      },
      commit,
    ),
    quantityField({ path: ["load", "resistance"], label: "Input resistance", dimension: "resistance" }, commit),
    quantityField({ path: ["load", "capacitance"], label: "Input capacitance", dimension: "capacitance" }, commit),
    quantityField(
      {
        path: ["load", "stopper"],
        label: "Grid stopper before it",
        dimension: "resistance",
        hint: "The resistor between the input and its first valve, whose capacitance lies behind it",
      },
      commit,
    ),
  ];
}

function cableFields(commit: Commit): Field[] {
  return [
    quantityField({ path: ["cable", "length"], label: "Cable length", dimension: "length" }, commit),
    kindChoice({ path: ["cable"], label: "Sort of cable", kinds: CABLES, dimensions: CABLE_DIMENSIONS }, commit),
    quantityField(
      { path: ["cable", "capacitance"], label: "Its capacitance, a metre", dimension: "capacitancePerLength" },
      commit,
    ),
    quantityField(
      {
        path: ["cable", "resistance"],
        label: "Resistance of its core, a metre",
        dimension: "resistancePerLength",
        hint: "About 33 mΩ; a usual lead's 0.2 Ω cannot be heard",
      },
      commit,
    ),
  ];
}

/** What hangs on the jack, and the scale: not parts, but they shape the sound all the same. */
export function createSurroundings(commit: Commit): { element: HTMLElement; fields: readonly Field[] } {
  const fields = [
    ...cableFields(commit),
    ...loadFields(commit),
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
