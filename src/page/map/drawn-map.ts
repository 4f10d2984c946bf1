import { type Cell, cellName, cellOf, type GuardOnHand } from "../cells/cell.ts";
import type { EqualsTold, MapTold } from "../cells/cell-desk.ts";

/** A map as it was worked out, with the cells that its dots stand for. */
export interface DrawnMap extends MapTold {
  readonly guards: readonly GuardOnHand[];
  readonly dots: readonly Cell[];
  readonly alike: EqualsTold;
}

export function drawnMap(told: MapTold, guards: readonly GuardOnHand[], alike: EqualsTold): DrawnMap {
  return { ...told, guards, alike, dots: told.cells.map(({ guard, settings }) => cellOf(guards[guard]!, settings)) };
}

const MOST_NAMED = 4;

/** "A, position 4; A, position 2 and 3 more". */
export function namesOf({ dots }: DrawnMap, cells: readonly number[], most = MOST_NAMED): string {
  const named = cells.slice(0, most).map((cell) => cellName(dots[cell]!));
  const more = cells.length - named.length;
  return `${named.join("; ")}${more > 0 ? ` and ${more} more` : ""}`;
}

/** Groups that hold cells of more than one guard. */
export function groupsAcross({ alike, cells }: DrawnMap): (readonly number[])[] {
  return alike.groups.filter((group) => new Set(group.map((cell) => cells[cell]!.guard)).size > 1);
}
