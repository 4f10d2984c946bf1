import type { Outline } from "./body-kind.ts";
import { inRow, mm, type Spots, turnedSpot } from "./spot.ts";

const RING_PITCH = mm(5);
const SMALLEST_RING = mm(11);
const SMALLEST_INNER = mm(4.5);

const ringRadius = (lugs: number, least: number) => Math.max(least, (lugs * RING_PITCH) / (2 * Math.PI));

interface Rotary {
  readonly poles: readonly string[];
  readonly throws: number;
}

const outerRadius = ({ poles, throws }: Rotary) =>
  Math.max(ringRadius(poles.length * throws, SMALLEST_RING), ringRadius(poles.length, SMALLEST_INNER) + mm(5));

/** A rotary's throws on a ring, pole by pole, clockwise from the bass side as seen from the back; commons on a ring within. */
export function ringSpots(rotary: Rotary): Spots {
  const { poles, throws } = rotary;
  const ways = poles.length * throws;
  const at = (radius: number, step: number) => turnedSpot({ x: 0, y: -radius }, (-360 * (step + 0.5)) / ways);
  return new Map(
    poles.flatMap((pole, index) => [
      [`${pole}0`, at(ringRadius(poles.length, SMALLEST_INNER), index * throws + (throws - 1) / 2)] as const,
      ...Array.from(
        { length: throws },
        (_, way) => [`${pole}${way + 1}`, at(outerRadius(rotary), index * throws + way)] as const,
      ),
    ]),
  );
}

export function ringOutline(rotary: Rotary): Outline {
  return { form: "round", radius: outerRadius(rotary) - mm(2) };
}

const BLOCK_PITCH = mm(6);

/** A switch of one's own contacts, as nothing more is known of it: a row for every letter that its lugs begin with. */
export function blockRows(lugs: readonly string[]): string[][] {
  const rows = new Map<string, string[]>();
  for (const lug of lugs) {
    const pole = /^[A-H](?=\d+$)/.exec(lug)?.[0] ?? "";
    rows.set(pole, [...(rows.get(pole) ?? []), lug]);
  }
  return [...rows.values()];
}

/** A row of lugs as found; null where none sits. */
export type LugRow = readonly (string | null)[];

/** Lugs as they were found to sit: the first row is the one nearest the treble side. */
export function foundSpots(rows: readonly LugRow[]): Spots {
  const columns = Math.max(...rows.map((row) => row.length));
  const at = (column: number, row: number) => ({
    x: (column - (columns - 1) / 2) * BLOCK_PITCH,
    y: ((rows.length - 1) / 2 - row) * BLOCK_PITCH,
  });
  return new Map(
    rows.flatMap((lugs, row) => lugs.flatMap((lug, column) => (lug === null ? [] : [[lug, at(column, row)] as const]))),
  );
}

export function blockSpots(lugs: readonly string[]): Spots {
  const rows = blockRows(lugs);
  return new Map(
    rows.flatMap((row, index) => inRow(row, BLOCK_PITCH, { x: 0, y: (index - (rows.length - 1) / 2) * BLOCK_PITCH })),
  );
}

export const blockOutline = (lugs: readonly string[]): Outline => rowsOutline(blockRows(lugs));

/** The block behind rows of lugs. */
export function rowsOutline(rows: readonly LugRow[]): Outline {
  const longest = Math.max(1, ...rows.map((row) => row.length));
  return { form: "box", width: BLOCK_PITCH * longest + mm(3), height: BLOCK_PITCH * Math.max(1, rows.length) + mm(3) };
}
