import { h } from "../../dom/element.ts";

/**
 * Whether a file carries the drawer: of itself that of the whole shelf, which is to be brought back as it was; one of some guards, which
 * goes to others as often as not, where it is ticked.
 */
export function createDrawerTick() {
  const ticked = { whole: true, some: false };
  let which: keyof typeof ticked = "whole";
  const box = h("input", { type: "checkbox" });
  box.addEventListener("change", () => {
    ticked[which] = box.checked;
  });
  return {
    element: h("label", { class: "tick drawer-tick" }, box, "with the drawer"),
    get isTicked() {
      return ticked[which];
    },
    /** @param isWhole whether what would be saved is the whole shelf */
    show: (isWhole: boolean) => {
      which = isWhole ? "whole" : "some";
      box.checked = ticked[which];
    },
  };
}
