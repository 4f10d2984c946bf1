import type { Sounding } from "../cells/cell-rooms.ts";
import { h, replaceContent } from "../dom/element.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import { shelfCodeInAddress } from "../share/code-in-address.ts";
import type { Bench } from "../start/bench.ts";

/** Style and code come side by side. */
function loadRooms() {
  void bringStyle("shelf.css");
  return import("./shelf-rooms.ts");
}

/** Whoever points at the button, or comes to it by key, is about to press it: what it opens is loaded meanwhile. */
function prepareNear(button: HTMLElement): void {
  const prepare = async () => {
    try {
      await (await loadRooms()).prepareShelf();
    } catch {
      // Told when it is asked for.
    }
  };
  for (const type of ["pointerenter", "pointerdown", "focus"]) button.addEventListener(type, prepare, { once: true });
}

export interface ShelfDoor {
  /** Keep the guard on the bench, and show the shelf. */
  readonly buttons: readonly HTMLElement[];
  /** Where it is told what could not be kept. */
  readonly fault: HTMLElement;
  readonly section: HTMLElement;
  /** Shows it. */
  show(): void;
  /** Has its code at hand before anybody points at it. */
  loadAhead(): Promise<unknown>;
}

/** What the first screen has of the shelf; all else is loaded when it is opened. */
export function createShelfDoor(bench: Bench, sounding: Sounding): ShelfDoor {
  const { store } = bench;
  const fault = h("div", {});
  const content = h("div", { class: "lazy" });
  const heading = h("h2", { id: "shelf-title", tabindex: -1 }, "The shelf");
  const close = h("button", { type: "button" }, "Close the shelf");
  const section = h(
    "section",
    { class: "panel shelf", "aria-labelledby": "shelf-title", hidden: true },
    h("div", { class: "shelf-head" }, heading, close),
    content,
  );
  const show = h("button", { type: "button", "aria-expanded": "false" }, "Shelf");
  prepareNear(show);
  const leave = () => {
    section.hidden = true;
    show.setAttribute("aria-expanded", "false");
    show.focus();
  };
  const fill = async () => {
    if (content.hasChildNodes()) return;
    replaceContent(content, h("p", { class: "hint loading" }, "Loading…"));
    try {
      const { createShelfRooms } = await loadRooms();
      replaceContent(content, await createShelfRooms(bench, sounding, leave));
    } catch (error) {
      replaceContent(content);
      store.set({ notice: `The shelf could not be loaded: ${(error as Error).message}` });
    }
  };
  const open = () => {
    section.hidden = false;
    show.setAttribute("aria-expanded", "true");
    void fill();
    section.dispatchEvent(new Event("shown", { bubbles: true }));
  };
  const enter = () => {
    open();
    heading.focus();
  };
  show.addEventListener("click", () => (section.hidden ? enter() : leave()));
  close.addEventListener("click", leave);
  const keep = h("button", { type: "button" }, "Keep on the shelf");
  keep.addEventListener("click", async () => {
    keep.disabled = true;
    try {
      const { keepFromBench } = await import("./keep-from-bench.ts");
      store.set({ notice: await keepFromBench(bench, fault) });
    } catch (error) {
      store.set({ notice: (error as Error).message });
    } finally {
      keep.disabled = false;
      keep.focus();
    }
  });
  // A link to guards shows them at once.
  if (shelfCodeInAddress() !== undefined) open();
  return {
    buttons: [keep, show],
    fault,
    section,
    show: enter,
    // What cannot be had now is told when it is asked for.
    loadAhead: () => loadRooms().catch(() => undefined),
  };
}
