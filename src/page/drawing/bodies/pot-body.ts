import { outlineOf } from "../../../build-file/bodies/lug-spots.ts";
import type { PartOf } from "../../../build-file/schema.ts";
import { s } from "../../dom/element.ts";
import type { Shape } from "../shapes.ts";
import { outlineShape, tab } from "./outline.ts";
import { unitsPerMetreOf } from "./scale.ts";

const ROOM = 17;

/** The box of the switch behind the case, about its lugs; its frame reaches to where the case is soldered. */
function shaftBox({ lugs }: Shape): SVGElement[] {
  const behind = lugs.filter(({ local }) => local.startsWith("s."));
  if (behind.length === 0) return [];
  const [xs, ys] = [behind.map(({ x }) => x), behind.map(({ y }) => y)];
  const [left, right] = [Math.min(...xs) - ROOM, Math.max(...xs) + ROOM];
  const [bottom, top] = [Math.min(...ys) - ROOM, Math.max(...ys, lugs.find(({ local }) => local === "case")!.y - ROOM)];
  return [
    s("rect", {
      x: left,
      y: -top - ROOM,
      width: right - left,
      height: top - bottom + ROOM,
      rx: 5,
      class: "body shaft-box",
    }),
  ];
}

/** A pot from behind: its case, the strips to its lugs, and the switch on its shaft. */
export function potBody(part: PartOf<"pot">, shape: Shape): SVGElement[] {
  const tracks = shape.lugs.filter(({ local }) => /^b?[123]$/.test(local));
  return [
    ...tracks.map((lug) => tab(lug, { x: lug.x * 0.9, y: 0 })),
    outlineShape(outlineOf(part), unitsPerMetreOf(part)),
    ...shaftBox(shape),
  ];
}
