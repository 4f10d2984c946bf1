import type { Outline } from "../../../build-file/bodies/body-kind.ts";
import { s } from "../../dom/element.ts";
import type { Point } from "../point.ts";
import type { LugSpot } from "../shapes.ts";

/** A body about the middle, as it is seen from the back. @param scale drawing units a metre */
export function outlineShape(outline: Outline, scale: number): SVGElement {
  if (outline.form === "round") return s("circle", { cx: 0, cy: 0, r: outline.radius * scale, class: "body" });
  const [width, height] = [outline.width * scale, outline.height * scale];
  return s("rect", { x: -width / 2, y: -height / 2, width, height, rx: 6, class: "body" });
}

const r = (value: number) => Math.round(value * 10) / 10;

/** The strip of metal that ends in a lug. Shapes have the treble side up, pages have y down. */
export function tab(lug: Point, from: Point): SVGElement {
  return s("path", { d: `M${r(from.x)} ${r(-from.y)}L${r(lug.x)} ${r(-lug.y)}`, class: "tab" });
}

/** Strips from a box's edge to the lugs that stand outside it. @param half of the box's height, in drawing units */
export function edgeTabs(lugs: readonly LugSpot[], half: number): SVGElement[] {
  return lugs.filter(({ y }) => Math.abs(y) > half).map((lug) => tab(lug, { x: lug.x, y: Math.sign(lug.y) * half }));
}
