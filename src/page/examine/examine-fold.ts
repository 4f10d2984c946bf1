import { h } from "../dom/element.ts";
import { createLazy } from "../dom/lazy.ts";
import type { AppStore } from "../state/app-state.ts";
import type { ReadBeside } from "./read-beside.ts";

/** Examining the soldered guard with an audio interface, whose code is loaded when it is opened. */
export function createExamineFold(store: AppStore, readBeside: ReadBeside): HTMLElement {
  const lazy = createLazy(async () => {
    const { createExaminePanel } = await import("./examine-panel.ts");
    return createExaminePanel(store, readBeside);
  });
  const element = h(
    "details",
    { class: "sound-card-fold no-print" },
    h("summary", {}, "Examine the finished guard with an audio interface"),
    lazy.element,
  );
  element.addEventListener("toggle", () => element.open && lazy.open());
  // What is not being loaded yet must not read as if it were.
  lazy.element.querySelector(".loading")?.classList.remove("loading");
  return element;
}
