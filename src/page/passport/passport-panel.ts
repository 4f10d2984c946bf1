import { h } from "../dom/element.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import type { AppStore } from "../state/app-state.ts";
import { createStaleNote } from "../state/stale-note.ts";
import { PassportDesk } from "./passport-desk.ts";

/** One page that says years later what the guard is: to be printed, kept as PDF, or laid into the cavity as a label. */
export function createPassportPanel(store: AppStore): HTMLElement {
  bringStyle("tools.css");
  const desk = new PassportDesk(store);
  store.set({ wantsPath: true });
  store.watch(
    (state) => [state.reading, state.benchOptions, state.faults.length > 0],
    (_reading, _options, _unreadable) => void desk.renew(),
  );
  store.watchAny(
    (state) => [state.view?.reading],
    () => void desk.show(),
  );
  return h(
    "div",
    { class: "stack" },
    createStaleNote(store, "the passport is"),
    desk.form,
    h("div", { class: "stack no-print" }, desk.address.element, desk.addressHint),
    h(
      "div",
      { class: "buttons no-print" },
      h("button", { type: "button", class: "primary", onclick: () => void desk.save("pdf") }, "Save the page (PDF)"),
      h("button", { type: "button", onclick: () => void desk.save("label") }, "Save a label, 60 × 40 mm (PDF)"),
      h("button", { type: "button", onclick: () => print() }, "Print the passport"),
    ),
    desk.fault,
    desk.paper,
  );
}
