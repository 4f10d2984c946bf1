import { CAUTIONS } from "../../bench/sheet/cautions.ts";
import { h } from "../dom/element.ts";

/** The usual cautions, shown wherever soldering or wiring is told. */
export function createCautions(open: boolean, className = "caution"): HTMLElement {
  return h(
    "details",
    { class: className, open },
    h("summary", {}, h("b", {}, "Before you pick up the iron")),
    h(
      "ul",
      {},
      CAUTIONS.map((text) => h("li", {}, text)),
    ),
  );
}
