import { createChoiceRow } from "../controls/choice-row.ts";
import { h } from "../dom/element.ts";
import type { Bench } from "../start/bench.ts";
import type { AppStore } from "../state/app-state.ts";
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
export function createHearPanel(bench: Bench, listening: Listening): HTMLElement {
  const { store } = bench;
  const grid = createCellGrid(bench, listening);
  return h("div", { class: "stack" }, whichBuild(store), grid);
}
