import { switchBody as bodyName } from "../../../build-file/bodies/bodies-of.ts";
import { outlineOf } from "../../../build-file/bodies/lug-spots.ts";
import type { PartOf } from "../../../build-file/schema.ts";
import { s } from "../../dom/element.ts";
import { boxOfOutline, type Shape } from "../shapes.ts";
import { edgeTabs, outlineShape } from "./outline.ts";
import { unitsPerMetreOf } from "./scale.ts";

/** What tells one body of a switch from another beside its lugs: a lever's wafers, a toggle's bush, a rotary's shaft. */
function features(name: ReturnType<typeof bodyName>, width: number, height: number): SVGElement[] {
  switch (name) {
    case "open-frame":
      return [];
    case "in-line-mirrored":
    case "in-line-alike":
      return [s("path", { d: `M${-width / 2 + 8} ${-height / 2 + 10}H${width / 2 - 8}`, class: "detail" })];
    case "mini-toggle":
      return [];
    case "slide":
      return [-1, 1].map((side) => s("circle", { cx: side * (width / 2 - 16), cy: 0, r: 6, class: "detail" }));
    case "ring":
      return [s("circle", { cx: 0, cy: 0, r: 9, class: "detail" })];
    default:
      return [];
  }
}

/** A switch from behind. */
export function switchBody(part: PartOf<"switch">, shape: Shape): SVGElement[] {
  const outline = outlineOf(part);
  const scale = unitsPerMetreOf(part);
  const { width, height } = boxOfOutline(outline);
  return [
    ...edgeTabs(shape.lugs, (height * scale) / 2),
    outlineShape(outline, scale),
    ...features(bodyName(part), width * scale, height * scale),
  ];
}
