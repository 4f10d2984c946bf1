import type { Build } from "../../build-file/schema.ts";
import { s } from "../dom/element.ts";
import { arrangeParts } from "./arrange.ts";
import { areaOf, findIn, seenLugs } from "./laid-guard.ts";
import { bodyShapes } from "./part-bodies.ts";
import { seenFrom } from "./view.ts";

const SIDE = "back";

const tenth = (value: number) => Math.round(value * 10) / 10;

/** A guard so small that nothing of it can be read: bodies, and every wire the straight way from lug to lug. */
export function smallDrawing(build: Build): SVGSVGElement {
  const placed = arrangeParts(build);
  const find = findIn(build, seenLugs(placed, SIDE));
  const { left, top, right, bottom } = areaOf(placed, SIDE);
  const bodies = placed.map((each) => {
    const { x, y } = seenFrom(SIDE, each.centre);
    const transform = `translate(${tenth(x)} ${tenth(y)}) rotate(${-each.turn})`;
    return s("g", { class: `part part-${each.part.kind}`, transform }, bodyShapes(each));
  });
  const wires = build.wires.flatMap((wire) => {
    const [from, to] = [find(wire.from), find(wire.to)];
    return from && to ? `M${tenth(from.x)} ${tenth(from.y)}L${tenth(to.x)} ${tenth(to.y)}` : [];
  });
  const viewBox = [left, top, right - left, bottom - top].map(Math.round).join(" ");
  return s(
    "svg",
    { viewBox, class: "small-drawing", "aria-hidden": "true" },
    bodies,
    s("path", { class: "wire", d: wires.join("") }),
  );
}
