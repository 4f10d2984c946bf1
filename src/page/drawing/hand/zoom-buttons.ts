import { h } from "../../dom/element.ts";
import type { Zoom } from "./zoom.ts";

export function zoomButtons(zoom: Zoom): HTMLElement {
  return h(
    "div",
    { class: "buttons no-print" },
    h("button", { type: "button", onclick: zoom.closer }, "Closer"),
    h("button", { type: "button", onclick: zoom.farther }, "Farther"),
    h("button", { type: "button", onclick: zoom.whole }, "Whole guard"),
  );
}
