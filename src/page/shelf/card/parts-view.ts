import type { Guard } from "../../../shelf/guard.ts";
import { h } from "../../dom/element.ts";
import type { ShelfDesk } from "../desk.ts";

interface PartsView {
  readonly element: HTMLElement;
  show(guard: Guard): void;
}

/** Offers what a retired guard is made of to the drawer. */
export function createPartsView({ bench }: ShelfDesk, failed: (error: unknown) => void): PartsView {
  let guard: Guard | undefined;
  let take: ((id: string, name: string) => Promise<void>) | undefined;
  const place = h("div", {});
  const load = async () => {
    const { openTakeParts } = await import("../../drawer/take-parts.ts");
    const parts = await openTakeParts(bench, (fault) => fault !== "" && failed(new Error(fault)));
    place.append(parts.element);
    return (id: string, name: string) => parts.take(id, name);
  };
  const button = h("button", { type: "button" }, "Take its parts into the drawer");
  button.addEventListener("click", async () => {
    const { id, name } = guard!;
    button.disabled = true;
    try {
      take ??= await load();
      await take(id, name);
    } catch (error) {
      failed(error);
    } finally {
      button.disabled = false;
    }
  });
  const element = h(
    "section",
    { class: "stack", "aria-label": "Its parts" },
    h("p", { class: "hint" }, "Retired: taken apart, its parts are free for another guard."),
    h("div", { class: "buttons" }, button),
    place,
  );
  return {
    element,
    show: (next) => {
      guard = next;
      element.hidden = next.state !== "retired";
    },
  };
}
