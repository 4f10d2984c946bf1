import { h } from "../dom/element.ts";
import { later } from "../dom/later.ts";
import type { OpenShelf } from "./open-shelf.ts";
import type { Shelf } from "./shelf.ts";
import { storageWords } from "./storage-room.ts";

const SETTLED_MS = 500;

/** Says where the guards are kept. */
export function createStorageNote({ shelf, refusal }: OpenShelf): HTMLElement {
  if (!shelf.lasts)
    return h(
      "p",
      { class: "caution", role: "alert" },
      `This browser stores nothing for this page (${refusal}); it may be a private window, or its settings. Guards can be put here all the same, but only until the page is closed: save them as a file before.`,
    );
  return h("p", { class: "hint" }, "Kept in this browser alone; the service has none of it.");
}

/** Says how much room the shelf takes and has, below it, where nothing is pushed away by what the browser says late. */
export function createRoomNote(shelf: Shelf): HTMLElement {
  const note = h("p", { class: "hint" });
  const show = later(SETTLED_MS, async () => {
    note.textContent = await storageWords();
  });
  if (shelf.lasts) {
    show();
    shelf.subscribe(show);
  }
  return note;
}
