import { h } from "../dom/element.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { createSwitchFinder } from "./switch-finder/switch-finder.ts";

/** Finding out what an unknown part is. */
export function createUnknownPanel(store: AppStore, editor: Editor): HTMLElement {
  bringStyle("tools.css");
  return h("div", { class: "sections" }, createSwitchFinder(store, editor));
}
