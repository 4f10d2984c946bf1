import { type Child, h } from "./element.ts";

/** Narrower than this, what is not needed at every turn of a knob is folded away. */
const NARROW = "(max-width: 700px)";

/** Content that stands openly where there is room, and folded under a line of its own on a phone. */
export function createFold(summary: Child, ...content: Child[]): HTMLDetailsElement {
  const narrow = matchMedia(NARROW);
  const element = h("details", { class: "fold", open: !narrow.matches }, h("summary", {}, summary), content);
  narrow.addEventListener("change", () => {
    element.open = !narrow.matches;
  });
  return element;
}
