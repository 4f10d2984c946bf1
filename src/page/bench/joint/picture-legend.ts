import { type Child, h, s } from "../../dom/element.ts";

function sample(text: string, ...drawn: Child[]): HTMLElement {
  return h("li", {}, s("svg", { viewBox: "0 -12 48 24", width: 44, height: 22, "aria-hidden": "true" }, drawn), text);
}

/** A line as it is drawn for an end that comes now. */
export function wayLine(isGround: boolean): SVGElement {
  return s("path", { d: "M2 0H42", class: `way way-now ${isGround ? "way-ground" : "way-hot"}` });
}

/** How lines and signs of the pictures are told apart, without colour. */
export function pictureLegend(): HTMLElement {
  return h(
    "ul",
    { class: "legend" },
    sample("hot", wayLine(false)),
    sample("ground: dashed", wayLine(true)),
    sample("there already: thin", s("path", { d: "M2 0H42", class: "way way-before" })),
    sample(
      "hangs free, for the joint with that number",
      s("path", { d: "M2 0H14", class: "way way-now" }),
      s("circle", { cx: 14, r: 5, class: "free-end free-end-now" }),
      s("text", { x: 21, y: 4.5, class: "taken" }, "→ 9"),
    ),
  );
}
