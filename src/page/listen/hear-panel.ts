import { createChoiceRow } from "../controls/choice-row.ts";
import { h } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { createCellGrid } from "./cell-grid.ts";
import type { Listening } from "./listening.ts";

function whichBuild(store: AppStore): HTMLElement {
  const row = createChoiceRow<"A" | "B">(
    "Which guard sounds",
    [
      { value: "A", label: "A, on the bench" },
      { value: "B", label: "B, kept aside" },
    ],
    (heardBuild) => store.set({ heardBuild }),
  );
  store.watch(
    (state) => [state.heardBuild, state.other],
    (heardBuild, other) => {
      row.element.hidden = other === undefined;
      row.show(heardBuild);
    },
  );
  return row.element;
}

/** Listening to the whole set. */
export function createHearPanel(store: AppStore, editor: Editor, listening: Listening): HTMLElement {
  const grid = createCellGrid(store, editor, listening);
  const element = h("div", { class: "stack" }, whichBuild(store), grid);
  element.addEventListener("shown", () => grid.dispatchEvent(new Event("shown")));
  return element;
}
