import type { DrawerRequest } from "../../contract/bench/bench.ts";
import { h, replaceContent } from "../dom/element.ts";
import { keepingFocus } from "../dom/keeping-focus.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { speechOf } from "../words/lug-speech.ts";
import { keepBench } from "./bench-desk.ts";
import { benchRefusal } from "./bench-refusal.ts";
import { createCautions } from "./cautions.ts";
import { hardwareView } from "./fitting/hardware-view.ts";
import { withMounting } from "./fitting/mounting-view.ts";
import { partsView } from "./parts-view.ts";
import { screenOffer } from "./screen-offer.ts";
import { createSheetFields } from "./sheet-fields.ts";
import { sheetView } from "./sheet-view.ts";

/** What to solder in which order, what to cut and what to buy. Printable. */
export function createSolderPanel(store: AppStore, editor: Editor): HTMLElement {
  keepBench(store);
  const sheet = h("div", {});
  const parts = h("div", { class: "stack" });
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
      const [title, speech] = [reading.source.title ?? "", speechOf(reading)];
      const offer = screenOffer(bench.sheet, reading.source, (change) => void editor.rework(change));
      const whole = withMounting(title, bench.mounting, speech, sheetView(title, bench.sheet, speech));
      replaceContent(sheet, offer, whole);
      const setDrawer = (drawer: readonly DrawerRequest[]) =>
        store.set({ benchOptions: { ...store.state.benchOptions, drawer } });
      const list = partsView(reading.source, bench.partsList, store.state.benchOptions.drawer, setDrawer);
      keepingFocus(parts, "drawer", () => replaceContent(parts, list, hardwareView(bench.hardware, speech)));
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
