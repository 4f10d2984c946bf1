import type { DrawerRequest } from "../../contract/bench/bench.ts";
import { h, replaceContent } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import { speechOf } from "../words/lug-speech.ts";
import { keepBench } from "./bench-desk.ts";
import { benchRefusal } from "./bench-refusal.ts";
import { createCautions } from "./cautions.ts";
import { partsView } from "./parts-view.ts";
import { createSheetFields } from "./sheet-fields.ts";
import { sheetView } from "./sheet-view.ts";

/** What to solder in which order, what to cut and what to buy. Printable. */
export function createSolderPanel(store: AppStore): HTMLElement {
  keepBench(store);
  const sheet = h("div", {});
  const parts = h("div", {});
  const refusal = h("div", { role: "alert" });
  store.watch(
    (state) => [state.bench, state.reading, state.benchFault],
    (bench, reading, fault) => {
      replaceContent(refusal, benchRefusal(fault));
      if (!bench || !reading) {
        replaceContent(sheet, !fault && h("p", { class: "hint" }, "Working out the build sheet…"));
        replaceContent(parts);
        return;
      }
      replaceContent(sheet, sheetView(reading.source.title ?? "", bench.sheet, speechOf(reading)));
      const setDrawer = (drawer: readonly DrawerRequest[]) =>
        store.set({ benchOptions: { ...store.state.benchOptions, drawer } });
      replaceContent(parts, partsView(reading.source, bench.partsList, setDrawer));
    },
  );
  return h(
    "div",
    { class: "stack" },
    createCautions(true),
    h(
      "div",
      { class: "row add-row no-print" },
      h("button", { type: "button", onclick: () => print() }, "Print the sheet"),
    ),
    createSheetFields(store),
    refusal,
    sheet,
    parts,
  );
}
