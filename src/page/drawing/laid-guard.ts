import { LugTable } from "../../build-file/lugs.ts";
import type { Build } from "../../build-file/schema.ts";
import { arrangeParts, type Placed } from "./arrange.ts";
import { type SeenLug, type Side, seenFrom, seenLug } from "./view.ts";

/** Where everything of a guard lies on the page, whatever is shown of it. */
export interface LaidGuard {
  readonly side: Side;
  readonly placed: readonly Placed[];
  readonly lugs: ReadonlyMap<string, SeenLug>;
  readonly viewBox: string;
  /** A lug by any of its names. */
  find(name: string): SeenLug | undefined;
}

const MARGIN = 36;

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

function viewBox(placed: readonly Placed[], side: Side): string {
  const boxes = placed.map((each) => boxOf(each, side));
  const left = Math.min(...boxes.map(({ x }) => x)) - MARGIN;
  const top = Math.min(...boxes.map(({ y }) => y)) - MARGIN;
  const right = Math.max(...boxes.map(({ x, width }) => x + width)) + MARGIN;
  const bottom = Math.max(...boxes.map(({ y, height }) => y + height)) + MARGIN;
  return [left, top, right - left, bottom - top].map(Math.round).join(" ");
}

export function layGuard(build: Build, side: Side): LaidGuard {
  const placed = arrangeParts(build);
  const lugs = seenLugs(placed, side);
  const table = new LugTable(build.parts);
  return {
    side,
    placed,
    lugs,
    viewBox: viewBox(placed, side),
    find: (name) => {
      const index = table.find(name);
      return index === undefined ? undefined : lugs.get(table.nameAt(index));
    },
  };
}
