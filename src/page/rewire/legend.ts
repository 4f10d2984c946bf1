import { type Child, h, s } from "../dom/element.ts";
import { jointSign } from "./signs.ts";

function sample(text: string, ...drawn: Child[]): HTMLElement {
  const picture = s("svg", { viewBox: "0 -15 60 30", width: 56, height: 28, "aria-hidden": "true" }, drawn);
  return h("li", {}, picture, text);
}

const line = (what: string) => s("path", { d: "M3 0H57", class: `wire wire-${what}` });
const frame = (cls: string) => s("rect", { x: 4, y: -11, width: 52, height: 22, rx: 6, class: cls });
const sign = (what: "open" | "make") => s("g", { transform: "translate(18 0)" }, jointSign(what, 3));

/** How wires, joints and parts are told apart, by line and shape. */
export function rewireLegend(): HTMLElement {
  return h(
    "ul",
    { class: "legend" },
    sample("stays", line("stays")),
    sample("to open: dashed, an open ring with the step's number", line("opens"), sign("open")),
    sample("to make: bold, a filled ring", line("comes"), sign("make")),
    sample("part that goes out", frame("goes-out")),
    sample("part that comes in", frame("comes-in")),
  );
}
