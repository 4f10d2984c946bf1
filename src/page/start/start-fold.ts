import { h } from "../dom/element.ts";
import { createFold } from "../dom/fold.ts";
import type { AppStore } from "../state/app-state.ts";

/** What one starts from, names and saves: on a phone a line with the guard's name. */
export function createStartFold(store: AppStore, ...content: readonly HTMLElement[]): HTMLElement {
  const title = h("b", {});
  store.watch(
    (state) => [state.source?.title],
    (text) => {
      title.textContent = text || "A guard";
    },
  );
  return createFold(["Guard: ", title], h("div", { class: "stack" }, content));
}
