import { outlineOf } from "../../build-file/bodies/lug-spots.ts";
import type { PartOf } from "../../build-file/schema.ts";
import { s } from "../dom/element.ts";
import type { Placed } from "./arrange.ts";
import { pickupBody } from "./bodies/pickup-body.ts";
import { coilCentres, PICKUP } from "./bodies/pickup-size.ts";
import { unitsPerMetreOf } from "./bodies/scale.ts";
import { boxOfOutline } from "./shapes.ts";

/** What is left of a part where nothing of it can be read. */
export interface Glyph {
  readonly shapes: readonly SVGElement[];
  readonly width: number;
  readonly height: number;
}

function sizeOf(part: PartOf<"pot"> | PartOf<"switch">) {
  const { width, height } = boxOfOutline(outlineOf(part));
  const scale = unitsPerMetreOf(part);
  return { width: width * scale, height: height * scale };
}

/** A knob: a circle with its pointer. */
function potGlyph(part: PartOf<"pot">): Glyph {
  const { width, height } = sizeOf(part);
  const radius = Math.min(width, height) / 2;
  const shapes = [s("circle", { r: radius, class: "body" }), s("path", { d: `M0 0V${-radius}`, class: "pointer" })];
  return { shapes, width: 2 * radius, height: 2 * radius };
}

/** A slot along the longer side, and the tip in it. */
function switchGlyph(part: PartOf<"switch">): Glyph {
  const { width, height } = sizeOf(part);
  const [along, across] = [Math.max(width, height) / 2, Math.min(width, height) / 2];
  const isLying = width >= height;
  const tip = along / 3;
  return {
    shapes: [
      s("rect", { x: -width / 2, y: -height / 2, width, height, rx: across / 2, class: "body" }),
      s("path", {
        d: isLying ? `M${-along * 0.7} 0H${along * 0.7}` : `M0 ${-along * 0.7}V${along * 0.7}`,
        class: "pointer",
      }),
      s("circle", { cx: isLying ? tip : 0, cy: isLying ? 0 : tip, r: across * 0.7, class: "tip" }),
    ],
    width,
    height,
  };
}

function pickupGlyph(part: PartOf<"pickup">): Glyph {
  const { coilWidth, coilGap, coilHeight } = PICKUP;
  const width = (coilCentres(part).length - 1) * coilGap + coilWidth + 22;
  return { shapes: pickupBody(part, () => "plain"), width, height: coilHeight };
}

/** Pickups, knobs and switches are what a person knows a guard by; undefined for all else. */
export function glyphOf({ part }: Placed): Glyph | undefined {
  switch (part.kind) {
    case "pickup":
      return pickupGlyph(part);
    case "pot":
      return potGlyph(part);
    case "switch":
      return switchGlyph(part);
    default:
      return undefined;
  }
}
