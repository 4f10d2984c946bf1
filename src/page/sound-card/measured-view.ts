import { showQuantity } from "../../build-file/show-quantity.ts";
import type { MeasureAnswer } from "../../contract/measure/measure.ts";
import { fittedView } from "../choice/fit-answer.ts";
import { createPutCoil } from "../choice/put-coil.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { metalView } from "./metal-view.ts";
import { createPutLead } from "./put-lead.ts";
import { createPutValue } from "./put-value.ts";
import type { Part } from "./resistor-way.ts";
import { signed } from "./signed.ts";

type Recordings = MeasureAnswer["recordings"];
type Behind = Extract<MeasureAnswer, { method: "series-resistor" }>;

const WHY = { lost: "samples were lost", stuck: "a dropout was filled in", clipped: "clipped" } as const;

function leftOutWords(leftOut: Recordings[number]["leftOut"]): string {
  if (leftOut.length === 0) return "none";
  return leftOut.map(({ pass, why }) => `pass ${pass}: ${WHY[why]}`).join("; ");
}

/** @param called what a person calls each recording */
export function recordingsTable<Name extends string>(
  recordings: readonly (Omit<Recordings[number], "file"> & { readonly file: Name })[],
  called: (name: Name) => string,
): HTMLElement {
  const rows = recordings.map(({ file, drift, noise, leftOut }) => [
    called(file),
    `${signed(drift, 1)} ppm`,
    `${signed(noise, 0)} dB`,
    leftOutWords(leftOut),
  ]);
  return plainTable("What the recordings were like", ["Recording", "Clock off by", "Noise", "Passes left out"], rows);
}

function valuesTable({ capacitance, lossFactor, resistance }: Behind): HTMLElement {
  const shown = (name: string, value: string, error: string) => [name, value, `± ${error}`];
  const quantity = (name: string, told: Behind["resistance"], dimension: "capacitance" | "resistance") =>
    told ? [shown(name, showQuantity(told.value, dimension), showQuantity(told.standardError, dimension, 2))] : [];
  const loss = lossFactor
    ? [shown("loss factor tan δ", signed(lossFactor.value, 4), lossFactor.standardError.toPrecision(2))]
    : [];
  const rows = [
    ...quantity("capacitance", capacitance, "capacitance"),
    ...loss,
    ...quantity("resistance", resistance, "resistance"),
  ];
  return plainTable("What was measured", ["Value", "Best", "Standard error"], rows);
}

/** A lead is no part of the guard, but its cable. */
function putFor({ capacitance, resistance }: Behind, part: Part | undefined, store: AppStore, editor: Editor) {
  if (capacitance && part === "lead") return createPutLead(store, editor, capacitance.value);
  if (capacitance) return createPutValue(store, editor, capacitance.value, "farads");
  return resistance && createPutValue(store, editor, resistance.value, "ohms");
}

function inputTold(input: Behind["input"]): string[] {
  const shown = [
    ...(input?.resistance ? [showQuantity(input.resistance, "resistance", 3)] : []),
    ...(input?.capacitance ? [showQuantity(input.capacitance, "capacitance", 3)] : []),
  ];
  return shown.length > 0 ? [`The input itself, with its lead: ${shown.join(", ")}. It is taken out.`] : [];
}

function behindView(answer: Behind, part: Part | undefined, store: AppStore, editor: Editor): HTMLElement {
  const { fit, scaleError, notes, input } = answer;
  const put = putFor(answer, part, store, editor);
  const scale = `Every value may be off by ±${Number((100 * scaleError).toPrecision(2))} % besides, with the known resistor and the inputs' gains.`;
  return h(
    "div",
    { class: "stack" },
    fit ? fittedView(fit, createPutCoil(store, editor, fit)) : valuesTable(answer),
    [scale, ...inputTold(input), ...notes].map((text) => h("p", { class: "hint" }, text)),
    put,
  );
}

function valuesView(answer: MeasureAnswer, part: Part | undefined, store: AppStore, editor: Editor): HTMLElement {
  switch (answer.method) {
    case "two-loads":
      return fittedView(answer.fit, createPutCoil(store, editor, answer.fit));
    case "series-resistor":
      return behindView(answer, part, store, editor);
    case "exciter":
      return metalView(answer, store, editor);
  }
}

/**
 * @param part what was measured, where it was behind a resistor
 * @param called what a person calls each recording
 */
export function measuredView(
  answer: MeasureAnswer,
  part: Part | undefined,
  store: AppStore,
  editor: Editor,
  called: (name: Recordings[number]["file"]) => string,
): HTMLElement {
  return h(
    "div",
    { class: "stack" },
    valuesView(answer, part, store, editor),
    recordingsTable(answer.recordings, called),
  );
}
