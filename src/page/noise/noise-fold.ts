import { h } from "../dom/element.ts";
import { createLazy } from "../dom/lazy.ts";
import type { AppStore } from "../state/app-state.ts";

/** Hum and hiss of the guard as it is laid, loaded when it is opened. */
export function createNoiseFold(store: AppStore): HTMLElement {
  const panel = createLazy(async () => (await import("./noise-panel.ts")).createNoisePanel(store));
  const fold = h("details", { class: "noise-fold" }, h("summary", {}, "Hum and hiss of this guard"));
  fold.addEventListener("toggle", () => {
    if (!fold.open) return;
    if (!panel.element.isConnected) fold.append(panel.element);
    panel.open();
  });
  return fold;
}
