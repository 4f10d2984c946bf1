import type { Guard } from "../../shelf/guard.ts";
import { h, replaceContent } from "../dom/element.ts";
import { saveGuards } from "./save-shelf.ts";
import { ShelfFault } from "./shelf.ts";

export interface FaultNotice {
  readonly element: HTMLElement;
  /** @param unkept what to offer a file of, where the error does not say */
  tell(error: unknown, unkept?: readonly Guard[]): void;
  clear(): void;
}

/** Says what could not be kept, and offers a file of it. */
export function createFaultNotice(): FaultNotice {
  const element = h("div", { class: "caution shelf-fault stack", role: "alert", hidden: true });
  const clear = () => {
    element.hidden = true;
    replaceContent(element);
  };
  const tell = (error: unknown, unkept: readonly Guard[] = []) => {
    const guards = error instanceof ShelfFault && error.unkept.length > 0 ? error.unkept : unkept;
    replaceContent(
      element,
      h("p", {}, (error as Error).message),
      h(
        "div",
        { class: "buttons" },
        guards.length > 0 &&
          h(
            "button",
            { type: "button", onclick: () => saveGuards(guards) },
            guards.length === 1 ? "Save this guard as a file" : `Save these ${guards.length} guards as a file`,
          ),
        h("button", { type: "button", class: "quiet", onclick: clear }, "Close"),
      ),
    );
    element.hidden = false;
  };
  return { element, tell, clear };
}
