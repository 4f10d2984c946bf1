import { h } from "../dom/element.ts";
import type { AppStore } from "./app-state.ts";

/** Tells what the latest change of the guard came to in wires and parts. */
export function createChangeLine(store: AppStore): HTMLElement {
  const line = h("p", { class: "hint change-line", role: "status" });
  store.watch(
    (state) => [state.changed],
    (changed) => {
      line.textContent = changed === "" ? "" : `Changed: ${changed}. Undo takes it back.`;
    },
  );
  return line;
}
