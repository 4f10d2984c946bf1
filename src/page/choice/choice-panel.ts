import { h } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { createEverythingTable } from "./everything-table.ts";
import { createFindValue } from "./find-value.ts";
import { createMyPickup } from "./my-pickup.ts";
import { createSoundCardFold } from "./sound-card-fold.ts";

/** Settling which part to take. */
export function createChoicePanel(store: AppStore, editor: Editor): HTMLElement {
  return h(
    "div",
    { class: "sections" },
    createFindValue(store, editor),
    createMyPickup(store, editor),
    createSoundCardFold(store, editor),
    createEverythingTable(store),
  );
}
