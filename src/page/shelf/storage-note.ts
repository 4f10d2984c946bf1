import { h } from "../dom/element.ts";
import { later } from "../dom/later.ts";
import type { OpenShelf } from "./open-shelf.ts";
import { storageWords } from "./storage-room.ts";

const SETTLED_MS = 500;

/** Says where the guards are kept, and for how long. */
export function createStorageNote({ shelf, refusal }: OpenShelf): HTMLElement {
  if (!shelf.lasts)
    return h(
      "p",
      { class: "caution", role: "alert" },
      `This browser stores nothing for this page (${refusal}); it may be a private window, or its settings. Guards can be put here all the same, but only until the page is closed: save them as a file before.`,
    );
  const note = h("p", { class: "hint" });
  const show = async () => {
    const words = await storageWords();
    note.textContent = `Kept in this browser alone; the service has none of it. ${words}`.trim();
  };
  void show();
  shelf.subscribe(later(SETTLED_MS, show));
  return note;
}
