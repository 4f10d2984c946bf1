import { h, replaceContent } from "../dom/element.ts";
import { formChoice } from "../fields/form-fields.ts";
import { createFormRun } from "../fields/form-run.ts";
import { postJson } from "../server/client.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { fittedView, rangeView } from "./fit-answer.ts";
import { METHODS, methods } from "./pickup-methods.ts";
import { createPutCoil } from "./put-coil.ts";

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
    return fittedView(answer, createPutCoil(store, editor, answer));
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
