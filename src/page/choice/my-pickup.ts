import type { FittedAnswer } from "../../contract/fit.ts";
import { freshId, h, replaceContent } from "../dom/element.ts";
import { formChoice } from "../fields/form-fields.ts";
import { createFormRun } from "../fields/form-run.ts";
import { postJson } from "../server/client.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import type { BuildSource } from "../state/reading.ts";
import { fittedView, rangeView } from "./fit-answer.ts";
import { METHODS, methods } from "./pickup-methods.ts";
import { withFittedCoil } from "./put-values.ts";

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
  const hint = h("p", { class: "hint" });
  const show = () => {
    const chosen = all[method.read()];
    hint.textContent = chosen.hint ?? "";
    hint.hidden = chosen.hint === undefined;
    replaceContent(
      holder,
      chosen.fields.map((field) => field.element),
    );
  };
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
    hint,
    holder,
    h("div", { class: "buttons" }, run.button),
    run.answer,
  );
}
