import { parseQuantity } from "../../build-file/quantity.ts";
import type { PlanFieldAnswer as PlanField } from "../../contract/recognise.ts";
import { freshId, h } from "../dom/element.ts";
import { readingText } from "../fields/quantity-field.ts";

/** @param value undefined where it is left as it was */
export type Choose = (field: string, value: string | undefined) => void;

type PlanChoice = Extract<PlanField, { kind: "choice" }>["choices"][number];

/** A field of the plan's form; it is drawn anew with every answer. */
type Drawn = (field: PlanField, choose: Choose) => HTMLElement;

/** What cannot be chosen says why, where it would be chosen. */
function optionOf({ value, label, reason }: PlanChoice, now: string): HTMLOptionElement {
  const isGrey = reason !== undefined && value !== now;
  return h("option", { value, disabled: isGrey }, isGrey ? `${label} (no: ${reason})` : label);
}

function select(field: PlanField & { kind: "choice" }, choose: Choose): HTMLElement {
  const id = freshId("plan");
  const element = h(
    "select",
    { id, "data-plan": field.id, onchange: () => choose(field.id, element.value) },
    field.choices.map((each) => optionOf(each, field.value)),
  );
  element.value = field.value;
  return h("div", { class: "field" }, h("label", { for: id }, field.title), element);
}

function tickBox(
  field: PlanField & { kind: "ticks" },
  tick: (typeof field.ticks)[number],
  choose: Choose,
): HTMLElement {
  const input = h("input", {
    type: "checkbox",
    checked: tick.on,
    disabled: tick.reason !== undefined,
    "data-plan": `${field.id}.${tick.value}`,
    onchange: () => choose(field.id, tick.value),
  });
  return h(
    "label",
    { class: "plan-tick" },
    input,
    tick.label,
    tick.reason !== undefined && h("span", { class: "hint" }, ` (${tick.reason})`),
  );
}

function ticks(field: PlanField & { kind: "ticks" }, choose: Choose): HTMLElement {
  return h(
    "fieldset",
    { class: "plan-ticks" },
    h("legend", {}, field.title),
    field.ticks.map((tick) => tickBox(field, tick, choose)),
  );
}

function isSame(written: string, before: string, dimension: "resistance" | "capacitance"): boolean {
  try {
    return parseQuantity(written, dimension).value === parseQuantity(before, dimension).value;
  } catch {
    return false;
  }
}

function quantity(field: PlanField & { kind: "quantity" }, choose: Choose): HTMLElement {
  const id = freshId("plan");
  const reading = h("span", { class: "reading" }, readingText(field.value, field.dimension));
  const input = h("input", {
    id,
    type: "text",
    autocomplete: "off",
    spellcheck: "false",
    value: field.value,
    "data-plan": field.id,
    oninput: () => {
      reading.textContent = readingText(input.value, field.dimension);
    },
    onchange: () => {
      const written = input.value.trim();
      const isAsBefore = isSame(written, field.value, field.dimension);
      if (isAsBefore) input.value = field.value;
      choose(field.id, isAsBefore ? undefined : written);
    },
  });
  return h("div", { class: "field" }, h("label", { for: id }, field.title), input, reading);
}

/** One option of the plan, in the trade's words. */
export const drawPlanField: Drawn = (field, choose) => {
  switch (field.kind) {
    case "choice":
      return select(field, choose);
    case "ticks":
      return ticks(field, choose);
    case "quantity":
      return quantity(field, choose);
  }
};
