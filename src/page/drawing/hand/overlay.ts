import { s } from "../../dom/element.ts";

/** Room for the signs that show what is in hand, and for the wire that follows the pointer. */
export function emptyOverlay(): SVGGElement {
  return s("g", { class: "in-hand" }, s("g", { class: "signs" }), s("path", { class: "rubber" }));
}
