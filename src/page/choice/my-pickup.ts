import type { FitRequest, FittedAnswer } from "../../contract/fit.ts";
import { freshId, h, replaceContent } from "../dom/element.ts";
import { type FormField, formArea, formChoice, formText } from "../fields/form-fields.ts";
import { createFormRun } from "../fields/form-run.ts";
import type { Option } from "../fields/plain-fields.ts";
import { postJson } from "../server/client.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import type { BuildSource } from "../state/reading.ts";
import { fittedView, rangeView } from "./fit-answer.ts";
import { withFittedCoil } from "./put-values.ts";

const METHODS = [
  { value: "resonances", label: "resonances with known caps across it" },
  { value: "impedance", label: "an impedance table" },
  { value: "response", label: "a response through a known load" },
  { value: "resistance", label: "only its DC resistance" },
] satisfies Option<FitRequest["method"]>[];

type PairLine = Extract<FitRequest, { method: "resonances" }>["readings"][number];

/** Lines of "cap, frequency", a resonance each. */
function resonanceLines(text: string): PairLine[] {
  return text
    .split("\n")
    .map((line) => line.trim())
    .filter(Boolean)
    .map((line) => {
      const [capacitance = "", frequency = ""] = line.split(/[,;\t]\s*|\s{2,}|\s(?=\d)/);
      return { capacitance: capacitance === "0" ? "0p" : capacitance, frequency };
    });
}

interface Method {
  readonly fields: readonly FormField[];
  body(): FitRequest;
}

function methods(): Readonly<Record<FitRequest["method"], Method>> {
  const resistance = formText("resistance", "DC resistance", "6k");
  const lines = formArea("readings", "Cap across it, resonance", "0, 6.1kHz\n470p, 3.2kHz\n1n, 2.4kHz");
  const type = formChoice("type", "Kind", [
    { value: "single", label: "single coil" },
    { value: "wide-single", label: "wide single coil" },
    { value: "humbucker", label: "humbucker" },
  ]);
  const impedance = formArea("table", "Hz, ohms, degrees (degrees may be left out)", "100, 6050, 14\n200, 6300, 26");
  const response = formArea("table", "Hz, dB", "100, 0.0\n200, 0.1");
  const load = formText("load.resistance", "Load resistance", "1M");
  const loadCap = formText("load.capacitance", "Load capacitance", "470p");
  const known = () => (resistance.read() ? { resistance: resistance.read() } : {});
  return {
    resonances: {
      fields: [resistance, lines],
      body: () => ({
        method: "resonances",
        resistance: resistance.read(),
        readings: resonanceLines(lines.read()),
      }),
    },
    impedance: {
      fields: [resistance, impedance],
      body: () => ({ method: "impedance", ...known(), table: impedance.read() }),
    },
    response: {
      fields: [resistance, response, load, loadCap],
      body: () => ({
        method: "response",
        ...known(),
        table: response.read(),
        load: { resistance: load.read(), capacitance: loadCap.read() || 0 },
      }),
    },
    resistance: {
      fields: [resistance, type],
      body: () => ({ method: "resistance", resistance: resistance.read(), type: type.read() }),
    },
  };
}

function coilNames(source: BuildSource | undefined): [string, string][] {
  return Object.entries(source?.parts ?? {}).flatMap(([name, part]) =>
    Object.keys((part.coils ?? {}) as object).map((coil): [string, string] => [name, coil]),
  );
}

/** A choice of a coil, and the button that gives it the fitted values. */
function createPut(store: AppStore, editor: Editor, fit: FittedAnswer): HTMLElement {
  const id = freshId("coil");
  const coils = coilNames(store.state.source);
  const select = h(
    "select",
    { id },
    coils.map(([pickup, coil], index) => h("option", { value: index }, `${pickup}, ${coil}`)),
  );
  const put = () => {
    const target = coils[Number(select.value)];
    if (!target) return;
    editor.edit((source) => withFittedCoil(source, target, fit.coil));
  };
  return h(
    "div",
    { class: "row add-row" },
    h("div", { class: "field" }, h("label", { for: id }, "Coil"), select),
    h("button", { type: "button", onclick: put }, "Give it these values"),
  );
}

/** A coil's values from what can be measured at home. */
export function createMyPickup(store: AppStore, editor: Editor): HTMLElement {
  const all = methods();
  const method = formChoice("method", "What was measured", METHODS);
  const holder = h("div", { class: "field-row" });
  const show = () =>
    replaceContent(
      holder,
      all[method.read()].fields.map((field) => field.element),
    );
  method.element.addEventListener("change", show);
  show();
  const fields = () => [method, ...all[method.read()].fields];
  const run = createFormRun("Work out the coil", fields, async () => {
    const answer = await postJson("/api/fit", all[method.read()].body());
    if (answer.method === "resistance") return rangeView(answer);
    return fittedView(answer, createPut(store, editor, answer));
  });
  return h(
    "section",
    { class: "stack" },
    h("h3", {}, "My pickup"),
    method.element,
    holder,
    h("div", { class: "buttons" }, run.button),
    run.answer,
  );
}
