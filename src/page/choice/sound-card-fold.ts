import { h } from "../dom/element.ts";
import { createLazy } from "../dom/lazy.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";

/** Measuring with an audio interface, whose code is loaded when it is opened. */
export function createSoundCardFold(store: AppStore, editor: Editor): HTMLElement {
  const lazy = createLazy(async () => {
    const { createSoundCardPanel } = await import("../sound-card/sound-card-panel.ts");
    return createSoundCardPanel(store, editor);
  });
  const element = h(
    "details",
    { class: "sound-card-fold" },
    h("summary", {}, "Measure a pickup, cap, pot or lead with an audio interface"),
    lazy.element,
  );
  element.addEventListener("toggle", () => element.open && lazy.open());
  // What is not being loaded yet must not read as if it were.
  lazy.element.querySelector(".loading")?.classList.remove("loading");
  return element;
}
