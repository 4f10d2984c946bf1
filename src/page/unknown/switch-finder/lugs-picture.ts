import type { FoundLug } from "../../../bench/switch-finder/question.ts";
import { s } from "../../dom/element.ts";

const PITCH = 34;
const ROWS_APART = 60;
const LUG = { width: 30, height: 38 };
const RING = 27;
const EDGE = 34;

/** The lugs as they sit, the two to touch ringed. @param touched their names */
export function lugsPicture(lugs: readonly FoundLug[], touched: readonly string[]): SVGElement {
  const columns = Math.max(...lugs.map(({ spot }) => spot!.x));
  const rows = Math.max(...lugs.map(({ spot }) => spot!.y));
  const [width, height] = [columns * PITCH + 2 * EDGE, rows * ROWS_APART + 2 * EDGE];
  const label = touched.length === 0 ? "The lugs as they sit" : `The lugs as they sit, ${touched.join(" and ")} ringed`;
  return s(
    "svg",
    { class: "found-lugs", viewBox: `0 0 ${width} ${height}`, width, height, role: "img", "aria-label": label },
    s("rect", { class: "found-body", x: 4, y: 4, width: width - 8, height: height - 8, rx: 10 }),
    lugs.map(({ name, spot }) => {
      const [x, y] = [spot!.x * PITCH + EDGE, spot!.y * ROWS_APART + EDGE];
      const isTouched = touched.includes(name);
      return s(
        "g",
        { class: isTouched ? "found-lug touched" : "found-lug" },
        s("rect", { x: x - LUG.width / 2, y: y - LUG.height / 2, width: LUG.width, height: LUG.height, rx: 8 }),
        isTouched && s("circle", { cx: x, cy: y, r: RING }),
        s("text", { x, y: y + 6, "text-anchor": "middle" }, name),
      );
    }),
  );
}
