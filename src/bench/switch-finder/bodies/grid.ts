import type { Spots } from "../../../build-file/bodies/spot.ts";
import type { FoundLug } from "../question.ts";

/** Lugs by their names, row by row from the top as seen from the back, each row from the left. */
export type Grid = readonly (readonly string[])[];

/** Lugs that differ less in height than this sit in one row. Metres. */
const SAME_ROW = 0.001;

/** The rows that a body's lugs sit in. */
export function gridOfSpots(spots: Spots): Grid {
  const rows: { y: number; lugs: { lug: string; x: number }[] }[] = [];
  for (const [lug, { x, y }] of [...spots].sort(([, a], [, b]) => b.y - a.y)) {
    const last = rows.at(-1);
    if (last && Math.abs(last.y - y) < SAME_ROW) last.lugs.push({ lug, x });
    else rows.push({ y, lugs: [{ lug, x }] });
  }
  return rows.map(({ lugs }) => lugs.sort((a, b) => a.x - b.x).map(({ lug }) => lug));
}

/** The rows that a person found lugs in; undefined where the spots of some are not told. */
export function gridOfFound(lugs: readonly FoundLug[]): Grid | undefined {
  if (lugs.some(({ spot }) => !spot)) return undefined;
  const heights = [...new Set(lugs.map(({ spot }) => spot!.y))].sort((a, b) => a - b);
  return heights.map((y) =>
    lugs
      .filter(({ spot }) => spot!.y === y)
      .sort((a, b) => a.spot!.x - b.spot!.x)
      .map(({ name }) => name),
  );
}

const flippedAcross = (grid: Grid): Grid => [...grid].reverse();
const flippedAlong = (grid: Grid): Grid => grid.map((row) => [...row].reverse());
const turned = (grid: Grid): Grid => flippedAcross(flippedAlong(grid));

/** Rows become columns; only where all are as long. */
function quarterTurned(grid: Grid): Grid[] {
  const length = grid[0]!.length;
  if (grid.some((row) => row.length !== length)) return [];
  const lying = Array.from({ length }, (_, column) => grid.map((row) => row[column]!).reverse());
  return [lying, turned(lying)];
}

export interface Held {
  readonly grid: Grid;
  /** How likely a person holds it so, against the others. Ours, no source. */
  readonly weight: number;
}

/** A body's lugs as a person may see them: as they are, turned, or from the other side. */
export function waysToHold(grid: Grid): Held[] {
  return [
    { grid, weight: 8 },
    { grid: turned(grid), weight: 4 },
    { grid: flippedAcross(grid), weight: 1 },
    { grid: flippedAlong(grid), weight: 1 },
    ...quarterTurned(grid).flatMap((lying) => [
      { grid: lying, weight: 1 },
      { grid: flippedAcross(lying), weight: 0.5 },
    ]),
  ];
}
