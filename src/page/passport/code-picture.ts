import { guardCodeOf } from "../../bench/passport/guard-code.ts";
import { s } from "../dom/element.ts";

/** A QR code symbol that a phone reads off the screen or off paper. */
export function codePicture(text: string): SVGElement {
  const { size, rows } = guardCodeOf(text);
  const d = rows.flatMap((row, y) => row.map((isDark, x) => (isDark ? `M${x} ${y}h1v1h-1z` : ""))).join("");
  const label = "A code that opens this guard";
  return s(
    "svg",
    {
      viewBox: `0 0 ${size} ${size}`,
      class: "code-picture",
      role: "img",
      "aria-label": label,
      "shape-rendering": "crispEdges",
    },
    s("title", {}, label),
    s("rect", { width: size, height: size, class: "code-light" }),
    s("path", { d, class: "code-dark" }),
  );
}
