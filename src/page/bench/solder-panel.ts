import type { DrawerRequest, SheetAnswer } from "../../contract/bench/bench.ts";
import { h, replaceContent } from "../dom/element.ts";
import { keepingFocus } from "../dom/keeping-focus.ts";
import { latestOnly } from "../dom/later.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import type { Reading } from "../state/reading.ts";
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
import { showTicks } from "./ticks.ts";

/** The sheet at the iron, one joint at a time; its code is loaded when it is asked for. */
function benchButton(store: AppStore, sheet: HTMLElement): HTMLButtonElement {
  const open = async () => {
    const { openJointByJoint } = await import("./joint/bench-view.ts");
    openJointByJoint(store, () => {
      showTicks(store.state.reading?.source.title ?? "", sheet);
      button.focus();
    });
  };
  const fail = (error: Error) => store.set({ notice: `Joint by joint could not be loaded: ${error.message}` });
  const button = h(
    "button",
    { type: "button", class: "primary", onclick: () => void open().catch(fail) },
    "Solder joint by joint",
  );
  return button;
}

interface Pictured {
  readonly reading: Reading;
  readonly sheet: SheetAnswer;
}

/** Hangs the stages' pictures in the sheet that stands; what draws them is loaded after it. */
function createPictureHanger(within: HTMLElement): (pictured: Pictured | undefined) => void {
  const latest = latestOnly();
  let stop = () => {};
  return async (pictured) => {
    const isLatest = latest();
    stop();
    stop = () => {};
    if (!pictured) return;
    // Without its pictures, as where the net is gone, the sheet says everything still.
    const module = await import("./joint/stage-pictures.ts").catch(() => undefined);
    if (module && isLatest()) stop = module.hangStagePictures(within, pictured.reading, pictured.sheet);
  };
}

/** What to solder in which order, what to cut and what to buy. Printable. */
export function createSolderPanel(store: AppStore, editor: Editor): HTMLElement {
  keepBench(store);
  const sheet = h("div", {});
  const parts = h("div", { class: "stack" });
  const refusal = h("div", { role: "alert" });
  const jointByJoint = benchButton(store, sheet);
  const hangPictures = createPictureHanger(sheet);
  store.watch(
    (state) => [state.bench, state.reading, state.benchFault],
    (bench, reading, fault) => {
      replaceContent(refusal, benchRefusal(fault));
      jointByJoint.disabled = !bench || !reading;
      if (!bench || !reading) {
        hangPictures(undefined);
        replaceContent(sheet, !fault && h("p", { class: "hint" }, "Working out the build sheet…"));
        replaceContent(parts);
        return;
      }
      const [title, speech] = [reading.source.title ?? "", speechOf(reading)];
      const offer = screenOffer(bench.sheet, reading.source, (change) => void editor.rework(change));
      const whole = withMounting(title, bench.mounting, speech, sheetView(title, bench.sheet, speech));
      replaceContent(sheet, offer, whole);
      hangPictures({ reading, sheet: bench.sheet });
      const setDrawer = (drawer: readonly DrawerRequest[]) =>
        store.set({ benchOptions: { ...store.state.benchOptions, drawer } });
      const held = { ...bench.partsList, staysOver: bench.staysOver };
      const list = partsView(reading.source, held, store.state.benchOptions.drawer, setDrawer);
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
      jointByJoint,
      h("button", { type: "button", onclick: () => print() }, "Print the sheet"),
    ),
    createSheetFields(store),
    refusal,
    sheet,
    parts,
  );
}
