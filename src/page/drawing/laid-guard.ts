import { LugTable } from "../../build-file/lugs.ts";
import type { Build } from "../../build-file/schema.ts";
import { arrangeParts, type Placed } from "./arrange.ts";
import { type Box as MiddleBox, textBoxes } from "./bodies/text-boxes.ts";
import type { Point } from "./point.ts";
import type { RoundedBow } from "./routes/rounded.ts";
import { type Ground, routeWires } from "./routes/route-wires.ts";
import { reachOf } from "./shapes.ts";
import { type SeenLug, type Side, seenFrom, seenLug } from "./view.ts";

/** Where everything of a guard lies on the page, whatever is shown of it. */
export interface LaidGuard {
  readonly side: Side;
  readonly placed: readonly Placed[];
  readonly lugs: ReadonlyMap<string, SeenLug>;
  readonly viewBox: string;
  /** The way of every wire, in the build's order. */
  readonly routes: readonly RoundedBow[];
  /** The middle of a lug's name, by the lug. */
  readonly labels: ReadonlyMap<string, Point>;
  /** The room of all texts but the lugs' names. */
  readonly texts: readonly MiddleBox[];
  /** What lies in the way of wires. */
  readonly ground: Ground;
  /** A lug by any of its names. */
  find(name: string): SeenLug | undefined;
}

/** Room about the parts, for wires that go round them. */
const MARGIN = 48;

export function seenLugs(placed: readonly Placed[], side: Side): Map<string, SeenLug> {
  return new Map(
    placed.flatMap(({ name, shape, centre }) =>
      shape.lugs.map((spot): [string, SeenLug] => {
        const lug = spot.local === "" ? name : `${name}.${spot.local}`;
        return [lug, seenLug(side, centre, lug, spot)];
      }),
    ),
  );
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The room that a part takes on the page. */
export function boxOf({ centre, shape }: Placed, side: Side): Box {
  const { x, y } = seenFrom(side, centre);
  return { x: x - shape.width / 2, y: y - shape.down, width: shape.width, height: shape.up + shape.down };
}

/** A lug by any of its names. */
export function findIn(build: Build, lugs: ReadonlyMap<string, SeenLug>): LaidGuard["find"] {
  const table = new LugTable(build.parts);
  return (name) => {
    const index = table.find(name);
    return index === undefined ? undefined : lugs.get(table.nameAt(index));
  };
}

/** The room that parts take on the page, with some about them for wires. */
export function areaOf(placed: readonly Placed[], side: Side) {
  const boxes = placed.map((each) => boxOf(each, side));
  return {
    left: Math.min(...boxes.map(({ x }) => x)) - MARGIN,
    top: Math.min(...boxes.map(({ y }) => y)) - MARGIN,
    right: Math.max(...boxes.map(({ x, width }) => x + width)) + MARGIN,
    bottom: Math.max(...boxes.map(({ y, height }) => y + height)) + MARGIN,
  };
}

function layAnew(build: Build, side: Side): LaidGuard {
  const placed = arrangeParts(build);
  const lugs = seenLugs(placed, side);
  const find = findIn(build, lugs);
  const area = areaOf(placed, side);
  const texts = placed.flatMap((each) => textBoxes(build, each, side));
  const bodies = placed.map((each) => {
    const { half, height } = reachOf(each.part);
    return {
      isPickup: each.part.kind === "pickup",
      ...seenFrom(side, each.centre),
      width: 2 * half,
      height: 2 * height,
    };
  });
  const all = [...lugs.values()];
  const ends = build.wires.map(({ from, to }) => [find(from)!, find(to)!] as const);
  const ground = { area, lugs: all, bodies, texts };
  const { routes, labels } = routeWires(ground, ends);
  const viewBox = [area.left, area.top, area.right - area.left, area.bottom - area.top].map(Math.round).join(" ");
  return { side, placed, lugs, viewBox, routes, labels, texts, ground, find };
}

const laid = new WeakMap<Build, Map<Side, LaidGuard>>();

/** Lays a guard out. One that was laid out before is as it was: a knob or a switch moves nothing. */
export function layGuard(build: Build, side: Side): LaidGuard {
  const sides = laid.get(build) ?? new Map<Side, LaidGuard>();
  laid.set(build, sides);
  const known = sides.get(side) ?? layAnew(build, side);
  sides.set(side, known);
  return known;
}
