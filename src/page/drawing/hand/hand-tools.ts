import { createAddPart } from "../../describe/add-part.ts";
import { h } from "../../dom/element.ts";
import type { AppStore } from "../../state/app-state.ts";
import type { Editor } from "../../state/editor.ts";
import type { GuardDrawing } from "../guard-drawing.ts";
import { freePlace } from "./free-place.ts";
import type { Hand } from "./hand.ts";
import type { Zoom } from "./zoom.ts";
import { zoomButtons } from "./zoom-buttons.ts";

function walkButtons(store: AppStore, editor: Editor): HTMLElement[] {
  const back = h("button", { type: "button", title: "Ctrl+Z", onclick: () => void editor.undo() }, "Step back");
  const on = h("button", { type: "button", title: "Ctrl+Shift+Z", onclick: () => void editor.redo() }, "Step on");
  store.watch(
    (state) => [state.canUndo, state.canRedo],
    (canUndo, canRedo) => {
      back.disabled = !canUndo;
      on.disabled = !canRedo;
    },
  );
  return [back, on];
}

/** What stands above the drawing: its size, the steps back and on, and the parts to add. */
export function createHandTools(
  { store, editor }: { readonly store: AppStore; readonly editor: Editor },
  hand: Hand,
  zoom: Zoom,
  drawing: () => GuardDrawing | undefined,
): HTMLElement {
  const tray = createAddPart(editor, {
    words: { label: "From the tray", button: "Lay it in" },
    more: (kind) => ({ place: freePlace(kind, drawing()?.placed ?? []) }),
    added: (name) => hand.choose({ kind: "part", name }),
  });
  return h(
    "div",
    { class: "hand-tools no-print" },
    zoomButtons(zoom),
    h("div", { class: "buttons" }, walkButtons(store, editor)),
    tray,
  );
}
