import { s } from "../dom/element.ts";
import { markOf } from "./marks.ts";

/** The mark of one of several, beside its name. */
export function markSign(index: number): SVGElement {
  const { path, colour } = markOf(index);
  return s(
    "svg",
    { class: "mark-sign", viewBox: "-1.4 -1.4 2.8 2.8", "aria-hidden": "true" },
    s("path", { d: path, class: `mark mark-${colour}` }),
  );
}
