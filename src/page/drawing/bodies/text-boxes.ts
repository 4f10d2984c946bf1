import type { Build } from "../../../build-file/schema.ts";
import { partLabel } from "../../state/names.ts";
import type { Placed } from "../arrange.ts";
import type { Point } from "../point.ts";
import { type Side, seenFrom } from "../view.ts";
import { dialText, legText } from "./part-words.ts";
import { textWidth } from "./text-width.ts";
import type { PartText } from "./texts.ts";

/** A rectangle about its middle. */
export interface Box extends Point {
  readonly width: number;
  readonly height: number;
}

/** As in drawing.css; a bold letter is a little wider. */
const NAME_SIZE = 14 * 1.08;
const SMALL_SIZE = 12.5;
const LINE_HEIGHT = 15;

export const MAX_LABEL = 30;

export function smallTextBox(text: string, at: Point): Box {
  return { ...at, width: textWidth(text, SMALL_SIZE), height: LINE_HEIGHT - 2 };
}

/** Which end of a text stands at its place: of a part turned on its side, texts begin beside it. */
export function anchorOf(placed: Placed, text: PartText, side: Side): "start" | "middle" | "end" {
  const upright = placed.upright.texts[placed.shape.texts.indexOf(text)]!;
  const across = (text.x - upright.x) * (side === "front" ? -1 : 1);
  const isOutside = placed.part.kind === "pot" ? text.what !== "value" : text.what === "name" || text.what === "value";
  if (!isOutside || Math.abs(across) < 25) return "middle";
  return across > 0 ? "start" : "end";
}

/** The longest that a text of a part may become as its control is moved. */
function longest(build: Build, { name, part }: Placed, what: PartText["what"]): string {
  if (what === "shaft") return "push-pull: centre";
  if (what === "coil" || what === "off") return "screw";
  if (what === "name") return `${partLabel(build, name)}${part.kind === "switch" ? " at 5" : ""}`.slice(0, MAX_LABEL);
  return part.kind === "pot" ? dialText(part, 5.5) : legText(part);
}

/** The room that the texts of a part take on the page, whatever its control shows. */
export function textBoxes(build: Build, placed: Placed, side: Side): Box[] {
  const { centre, shape } = placed;
  return shape.texts.map((text) => {
    const size = text.what === "name" || text.what === "shaft" ? NAME_SIZE : SMALL_SIZE;
    const width = textWidth(longest(build, placed, text.what), size);
    const at = seenFrom(side, { x: centre.x + text.x, y: centre.y + text.y });
    const anchor = anchorOf(placed, text, side);
    const shift = anchor === "middle" ? 0 : (anchor === "start" ? 1 : -1) * (width / 2);
    return { x: at.x + shift, y: at.y, width, height: LINE_HEIGHT };
  });
}
