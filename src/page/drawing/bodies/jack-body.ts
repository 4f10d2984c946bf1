import { jackBody as bodyName } from "../../../build-file/bodies/bodies-of.ts";
import { outlineOf } from "../../../build-file/bodies/lug-spots.ts";
import type { PartOf } from "../../../build-file/schema.ts";
import { s } from "../../dom/element.ts";
import type { Shape } from "../shapes.ts";
import { edgeTabs, outlineShape, tab } from "./outline.ts";
import { unitsPerMetreOf } from "./scale.ts";

const LEAF_TIP = { x: 6, y: 16 };

/** A jack from behind: the sleeve's lug grows out of the ring about the bush, the tip's out of the leaf that crosses it. */
export function jackBody(part: PartOf<"jack">, { lugs }: Shape): SVGElement[] {
  const outline = outlineOf(part);
  const scale = unitsPerMetreOf(part);
  const body = outlineShape(outline, scale);
  switch (bodyName(part)) {
    case "open":
      return [
        ...lugs.filter(({ local }) => local === "sleeve").map((lug) => tab(lug, { x: 0, y: 0 })),
        body,
        s("circle", { cx: 0, cy: 0, r: 14, class: "body" }),
        ...lugs.filter(({ local }) => local !== "sleeve").map((lug) => tab(lug, { ...LEAF_TIP, x: LEAF_TIP.x - 4 })),
      ];
    case "barrel":
      return [
        body,
        s("circle", { cx: 0, cy: 0, r: outline.form === "round" ? outline.radius * scale - 7 : 9, class: "detail" }),
      ];
    case "box":
      return [
        ...edgeTabs(lugs, outline.form === "box" ? (outline.height * scale) / 2 : 0),
        body,
        s("circle", { cx: 0, cy: 0, r: 14, class: "detail" }),
      ];
  }
}
