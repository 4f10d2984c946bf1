import type { Step } from "../../build-file/rewire/steps.ts";
import { s } from "../dom/element.ts";

/** A joint to open is an open ring, one to make a filled one: no colour is needed to tell them apart. */
export function jointSign(what: Step["do"], number: number | string = ""): SVGElement[] {
  return [
    s("circle", { r: 13, class: `joint-ring joint-${what}` }),
    s("text", { y: 4.5, class: `joint-number joint-${what}`, "text-anchor": "middle" }, number),
  ];
}

/** The same before a step in the list. */
export function stepSign(what: Step["do"]): SVGElement {
  return s(
    "svg",
    { viewBox: "-15 -15 30 30", width: 16, height: 16, class: "step-sign", "aria-hidden": "true" },
    jointSign(what),
  );
}
