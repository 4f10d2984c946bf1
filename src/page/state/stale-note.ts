import { h } from "../dom/element.ts";
import type { AppStore } from "./app-state.ts";

/** Says beside what is shown of a guard that it is not what is written now, as long as that cannot be read. */
export function createStaleNote(store: AppStore, shown: string): HTMLElement {
  const note = h(
    "p",
    { class: "stale-note", hidden: true },
    `Not of what is written now, which cannot be read yet: ${shown} of the last readable state.`,
  );
  store.watch(
    (state) => [state.faults.length > 0],
    (isUnreadable) => {
      note.hidden = !isUnreadable;
    },
  );
  return note;
}
