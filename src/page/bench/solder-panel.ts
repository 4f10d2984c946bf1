import type { DrawerRequest } from "../../contract/bench/bench.ts";
import { h, replaceContent } from "../dom/element.ts";
import { keepingFocus } from "../dom/keeping-focus.ts";
import type { AppStore } from "../state/app-state.ts";
import { speechOf } from "../words/lug-speech.ts";
import { keepBench } from "./bench-desk.ts";
import { benchRefusal } from "./bench-refusal.ts";
import { createCautions } from "./cautions.ts";
import { hardwareView } from "./fitting/hardware-view.ts";
import { withMounting } from "./fitting/mounting-view.ts";
import { createNumberSetting } from "./number-setting.ts";
import { partsView } from "./parts-view.ts";
import { sheetView } from "./sheet-view.ts";

function allowanceField(store: AppStore, key: "slack" | "strip", label: string, millimetres: number): HTMLElement {
  return createNumberSetting({ name: key, label, unit: "mm", value: millimetres, min: 0, max: 200 }, (value) => {
    const { benchOptions } = store.state;
    const allowances = { ...benchOptions.allowances, [key]: value / 1000 };
    store.set({ benchOptions: { ...benchOptions, allowances } });
  });
}

/** What to solder in which order, what to cut and what to buy. Printable. */
export function createSolderPanel(store: AppStore): HTMLElement {
  keepBench(store);
  const sheet = h("div", {});
  const parts = h("div", { class: "stack" });
  const refusal = h("div", { role: "alert" });
  const { slack, strip } = store.state.benchOptions.allowances;
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
      replaceContent(sheet, withMounting(title, bench.mounting, speech, sheetView(title, bench.sheet, speech)));
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
      allowanceField(store, "slack", "Slack on every wire, mm", slack * 1000),
      allowanceField(store, "strip", "Stripped at each end, mm", strip * 1000),
      h("button", { type: "button", onclick: () => print() }, "Print the sheet"),
    ),
    refusal,
    sheet,
    parts,
  );
}
