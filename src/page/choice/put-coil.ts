import type { FittedAnswer } from "../../contract/fit.ts";
import { freshId, h } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import type { BuildSource } from "../state/reading.ts";
import { withFittedCoil } from "./put-values.ts";

function coilNames(source: BuildSource | undefined): [string, string][] {
  return Object.entries(source?.parts ?? {}).flatMap(([name, part]) =>
    Object.keys((part.coils ?? {}) as object).map((coil): [string, string] => [name, coil]),
  );
}

type Target = readonly [pickup: string, coil: string];

/** A choice of a coil, and the button that changes it. @param called what the button says */
export function createPutIntoCoil(
  store: AppStore,
  editor: Editor,
  called: string,
  changed: (source: BuildSource, target: Target) => BuildSource,
): HTMLElement {
  const id = freshId("coil");
  const coils = coilNames(store.state.source);
  const select = h(
    "select",
    { id },
    coils.map(([pickup, coil], index) => h("option", { value: index }, `${pickup}, ${coil}`)),
  );
  const put = () => {
    const target = coils[Number(select.value)];
    if (target) editor.edit((source) => changed(source, target));
  };
  return h(
    "div",
    { class: "row add-row" },
    h("div", { class: "field" }, h("label", { for: id }, "Coil"), select),
    h("button", { type: "button", onclick: put }, called),
  );
}

/** As above, with a fit's values. */
export function createPutCoil(store: AppStore, editor: Editor, fit: FittedAnswer): HTMLElement {
  return createPutIntoCoil(store, editor, "Give it these values", (source, target) =>
    withFittedCoil(source, target, fit.coil),
  );
}
