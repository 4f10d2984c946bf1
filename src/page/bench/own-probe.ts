import { lugInput } from "../describe/wire-row.ts";
import { h } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";

/** Adds a reading between any two lugs, in the setting on the bench. */
export function createOwnProbe(store: AppStore): HTMLElement {
  const [from, to] = [lugInput("First probe on"), lugInput("Second probe on")];
  const add = (event: Event) => {
    event.preventDefault();
    if (!from.value.trim() || !to.value.trim()) return;
    const { benchOptions, settings } = store.state;
    const probe = { between: [from.value.trim(), to.value.trim()], settings };
    store.set({ benchOptions: { ...benchOptions, probes: [...benchOptions.probes, probe] } });
    from.value = "";
    to.value = "";
  };
  return h(
    "form",
    { class: "row add-row no-print", onsubmit: add },
    h("div", { class: "field" }, h("span", { class: "hint" }, "Between any two lugs"), from),
    to,
    h("button", { type: "submit" }, "Add this reading"),
  );
}
