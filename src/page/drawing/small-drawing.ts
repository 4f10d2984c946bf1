import type { Build } from "../../build-file/schema.ts";
import { s } from "../dom/element.ts";
import { arrangeParts, type Placed } from "./arrange.ts";
import { type Glyph, glyphOf } from "./small-glyphs.ts";
import { seenFrom } from "./view.ts";

const SIDE = "back";
const MARGIN = 34;

interface Drawn extends Glyph {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
}

const tenth = (value: number) => Math.round(value * 10) / 10;

function drawn(placed: Placed): Drawn[] {
  const glyph = glyphOf(placed);
  return glyph ? [{ ...glyph, ...seenFrom(SIDE, placed.centre), turn: placed.turn }] : [];
}

/** How far a glyph reaches each way as it lies. */
function reachOf({ width, height, turn }: Drawn) {
  const angle = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))];
  return { across: (width * cos + height * sin) / 2, down: (width * sin + height * cos) / 2 };
}

function viewBoxOf(parts: readonly Drawn[]): string {
  const boxes = parts.map((part) => ({ ...part, ...reachOf(part) }));
  const left = Math.min(...boxes.map(({ x, across }) => x - across)) - MARGIN;
  const right = Math.max(...boxes.map(({ x, across }) => x + across)) + MARGIN;
  const top = Math.min(...boxes.map(({ y, down }) => y - down)) - MARGIN;
  const bottom = Math.max(...boxes.map(({ y, down }) => y + down)) + MARGIN;
  return [left, top, right - left, bottom - top].map(Math.round).join(" ");
}

/** A guard so small that only what it is known by is drawn: pickups, knobs and switches where they sit, seen from the back. */
export function smallDrawing(build: Build): SVGSVGElement {
  const parts = arrangeParts(build).flatMap(drawn);
  return s(
    "svg",
    { viewBox: parts.length > 0 ? viewBoxOf(parts) : "0 0 1 1", class: "small-drawing", "aria-hidden": "true" },
    parts.map(({ shapes, x, y, turn }) =>
      s("g", { transform: `translate(${tenth(x)} ${tenth(y)}) rotate(${-turn})` }, shapes),
    ),
  );
}
