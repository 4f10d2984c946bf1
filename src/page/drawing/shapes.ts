import type { Outline } from "../../build-file/bodies/body-kind.ts";
import { lugSpots, outlineOf } from "../../build-file/bodies/lug-spots.ts";
import type { Part, PartOf } from "../../build-file/schema.ts";
import { PICKUP } from "./bodies/pickup-size.ts";
import { unitsPerMetreOf } from "./bodies/scale.ts";
import { type PartText, textsOf } from "./bodies/texts.ts";
import type { Point } from "./point.ts";

export interface LugSpot extends Point {
  /** The lug's name within its part. */
  readonly local: string;
  readonly label: string;
  /** Unit vector in which wires leave it; 0, 0 where they may leave any way. */
  readonly leave: Point;
  /** Unit vector from the lug to where its name stands best. */
  readonly beside: Point;
}

/**
 * A part as it is drawn, about its own middle: x towards the neck, y towards the treble side, which is up on the page. Which lug
 * lies beside which is as in `build-file/bodies`; the drawing's units are about a third of a millimetre of the guard.
 */
export interface Shape {
  readonly width: number;
  /** How far it reaches towards the bass side, down on the page, and towards the treble side. */
  readonly up: number;
  readonly down: number;
  readonly lugs: readonly LugSpot[];
  readonly texts: readonly PartText[];
}

const { coilGap, coilHeight, leadGap } = PICKUP;

const UP: Point = { x: 0, y: 1 };
const DOWN: Point = { x: 0, y: -1 };
const RIGHT: Point = { x: 1, y: 0 };
const LEFT: Point = { x: -1, y: 0 };
const UP_RIGHT: Point = { x: 0.87, y: 0.5 };
const DOWN_RIGHT: Point = { x: 0.87, y: -0.5 };
const ANY: Point = { x: 0, y: 0 };

const labelOf = (local: string) => local.split(".").at(-1)!;

/** A pickup's leads in the geometry's order, but spread wide: in life they are too near each other for their names. */
function pickupLugs(pickup: PartOf<"pickup">): LugSpot[] {
  const y = coilHeight / 2 + 32;
  const inOrder = [...lugSpots(pickup)].sort(([, a], [, b]) => a.x - b.x).map(([local]) => local);
  const leads = inOrder.length - 1;
  return inOrder.map((local, index) => ({
    local,
    x: (index - (leads - 1) / 2) * leadGap,
    y,
    label: labelOf(local),
    leave: UP,
    beside: DOWN,
  }));
}

/** The side of a round body on which a lug stands. */
function sideOf({ x, y }: Point): Point {
  if (Math.abs(y) >= Math.abs(x)) return y > 0 ? UP : DOWN;
  return x > 0 ? RIGHT : LEFT;
}

export function boxOfOutline(outline: Outline): { width: number; height: number } {
  return outline.form === "box" ? outline : { width: 2 * outline.radius, height: 2 * outline.radius };
}

/** How wires leave a lug and where its name stands, by its place on the body. */
function directions(part: Part, local: string, at: Point): Pick<LugSpot, "leave" | "beside"> {
  const aside = at.x < 0 ? LEFT : RIGHT;
  switch (part.kind) {
    case "pot":
      if (local === "case") return { leave: ANY, beside: RIGHT };
      return local.startsWith("s.") ? { leave: aside, beside: aside } : { leave: DOWN, beside: UP };
    case "switch": {
      if (local === "frame" && !part.lugRows) return { leave: UP, beside: RIGHT };
      const isColumn =
        !part.lugRows && ["spdt", "dpdt", "dpdt-on-on-on"].includes(part.type ?? "") && part.body !== "slide";
      if (isColumn) return { leave: aside, beside: aside };
      if (part.type === "rotary" && !part.lugRows) return { leave: sideOf(at), beside: sideOf(at) };
      // A row's contacts run along it, within the body: names stand outside of that.
      if (at.y === 0) return { leave: ANY, beside: DOWN };
      return at.y > 0 ? { leave: UP, beside: UP_RIGHT } : { leave: DOWN, beside: DOWN_RIGHT };
    }
    case "jack":
      return { leave: DOWN, beside: part.body === "barrel" ? DOWN : local === "tip" ? LEFT : RIGHT };
    case "terminal":
      return { leave: ANY, beside: DOWN };
    default:
      return { leave: aside, beside: UP };
  }
}

function lugsOf(part: Part): LugSpot[] {
  if (part.kind === "pickup") return pickupLugs(part);
  const scale = unitsPerMetreOf(part);
  return [...lugSpots(part)].map(([local, { x, y }]) => {
    const at = { x: round(x * scale), y: round(y * scale) };
    const label = part.kind === "cap" || part.kind === "resistor" ? "" : labelOf(local);
    return { local, ...at, label, ...directions(part, local, at) };
  });
}

const round = (value: number) => Math.round(value * 10) / 10 || 0;

/** Room beside the outermost lugs for their names and for wires to turn. */
const ASIDE = 26;
const BELOW = 22;
const ABOVE = 14;

/** Half the width and the two heights of a body without its lugs and texts. */
export function reachOf(part: Part): { half: number; height: number } {
  if (part.kind === "pickup") {
    const coils = Object.keys(part.coils).length;
    return { half: (coils * coilGap) / 2, height: coilHeight / 2 };
  }
  if (part.kind === "cap" || part.kind === "resistor") return { half: 24, height: 10 };
  if (part.kind === "terminal") return { half: 10, height: 10 };
  const { width, height } = boxOfOutline(outlineOf(part));
  const scale = unitsPerMetreOf(part);
  return { half: (width / 2) * scale, height: (height / 2) * scale };
}

export function shapeOf(part: Part): Shape {
  const lugs = lugsOf(part);
  const { half, height } = reachOf(part);
  const texts = textsOf(part, { top: Math.max(height, ...lugs.map(({ y }) => y)), bottom: height });
  const sides = lugs.map(({ x, label }) => Math.abs(x) + (label === "" ? 20 : ASIDE));
  const ys = [...lugs.map(({ y }) => y), ...texts.map(({ y }) => y), height, -height];
  return {
    width: 2 * Math.max(half + 8, 44, ...sides),
    up: BELOW - Math.min(...ys),
    down: ABOVE + Math.max(...ys),
    lugs,
    texts,
  };
}
