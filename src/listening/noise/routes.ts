import { layoutOf } from "../../build-file/bodies/layout.ts";
import { lugPlaces } from "../../build-file/bodies/lug-places.ts";
import type { Spot } from "../../build-file/bodies/spot.ts";
import { hasCoilLeads } from "../../build-file/lug-names.ts";
import { LugTable } from "../../build-file/lugs.ts";
import type { Build } from "../../build-file/schema.ts";
import { alongEdges, type Path, upToNearest } from "./path.ts";

/** Where a guard's lugs lie and which way its wires go. */
export interface Routes {
  /** By the lug's index in the table. */
  readonly lugs: readonly Spot[];
  /** In the build's order, each from its `from` to its `to`. */
  readonly wires: readonly Path[];
}

export interface Laying {
  /** Whether the wires of every pickup, and those to the jack, are twisted round each other as far as they go together. */
  readonly isTwisted: boolean;
}

interface Ends {
  readonly from: number;
  readonly to: number;
}

/** The pickups and jacks whose wires lie in one cable, or are twisted. */
function bundledParts(build: Build, isTwisted: boolean): string[] {
  return Object.entries(build.parts).flatMap(([name, part]) => {
    const isCable = part.kind === "pickup" && (hasCoilLeads(part) || part.metal === "braid");
    return isCable || (isTwisted && (part.kind === "pickup" || part.kind === "jack")) ? [name] : [];
  });
}

/** Lets the wires of a part follow one of them, each as far as it serves it. */
function bundle(table: LugTable, part: string, ends: readonly Ends[], lugs: readonly Spot[], wires: Path[]): void {
  const isOwn = (lug: number) => table.lugs[lug]!.part === part;
  const own = ends.flatMap(({ from, to }, wire) => (isOwn(from) === isOwn(to) ? [] : [{ wire, isBack: isOwn(to) }]));
  const outward = own.map(({ wire, isBack }) => (isBack ? [...wires[wire]!].reverse() : wires[wire]!));
  const guide = outward[0];
  if (!guide) return;
  for (const [index, { wire, isBack }] of own.entries()) {
    if (index === 0) continue;
    const end = lugs[isBack ? ends[wire]!.from : ends[wire]!.to]!;
    const path = [outward[index]![0]!, ...upToNearest(guide, end), end];
    wires[wire] = isBack ? path.reverse() : path;
  }
}

/**
 * Every wire from lug to lug along the guard's edges; a jumper within a part straight. A pickup's leads that come out in one
 * cable stay together. The jack's lugs count as one place, where the cable takes over.
 */
export function routesOf(build: Build, { isTwisted }: Laying): Routes {
  const table = new LugTable(build.parts);
  const places = layoutOf(build);
  const spots = lugPlaces(build, places);
  const lugs = table.lugs.map(({ name, part }) =>
    build.parts[part]!.kind === "jack" ? places.get(part)! : spots.get(name)!,
  );
  const ends = build.wires.map(({ from, to }) => ({ from: table.indexOf(from), to: table.indexOf(to) }));
  const wires: Path[] = ends.map(({ from, to }) => {
    const [a, b] = [lugs[from]!, lugs[to]!];
    return table.lugs[from]!.part === table.lugs[to]!.part ? [a, b] : alongEdges(a, b);
  });
  for (const part of bundledParts(build, isTwisted)) bundle(table, part, ends, lugs, wires);
  return { lugs, wires };
}
