import type { Part } from "../../../build-file/schema.ts";
import { s } from "../../dom/element.ts";
import { seenLugs } from "../laid-guard.ts";
import { drawLug } from "../lugs-layer.ts";
import { bodyShapes } from "../part-bodies.ts";
import { placeLabels } from "../routes/labels.ts";
import { shapeOf } from "../shapes.ts";

const MARGIN = 6;

/** A part alone as the drawing draws it, seen from the back, its lugs named. */
export function bodyPicture(part: Part): SVGSVGElement {
  const shape = shapeOf(part);
  const placed = { name: "part", part, shape, upright: shape, turn: 0, centre: { x: 0, y: 0 } };
  const lugs = [...seenLugs([placed], "back").values()];
  const { labels } = placeLabels(lugs, [], []);
  const ys = lugs.map(({ y }) => y);
  const [top, bottom] = [Math.min(-44, ...ys.map((y) => y - 26)), Math.max(44, ...ys.map((y) => y + 26))];
  const half = shape.width / 2 + MARGIN;
  return s(
    "svg",
    { viewBox: [-half, top, 2 * half, bottom - top].join(" "), class: "drawing body-picture", "aria-hidden": "true" },
    s("g", { class: `part part-${part.kind}` }, bodyShapes(placed)),
    lugs.map((lug) => drawLug(lug, labels.get(lug.name), { cls: "", title: lug.label, attributes: {} })),
  );
}
