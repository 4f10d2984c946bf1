import { assign } from "./assign.ts";
import type { Need } from "./needs.ts";
import type { Piece } from "./pieces.ts";
import { misfitOf } from "./serves.ts";

/** Weighs more than all misfits of the largest guards together. */
const WITHOUT = 1e6;
const NOT_SERVED = 1e9;
/** Parts that lie about are taken before a kit is opened for one as good. */
const OPENING = 1e-3;
/** Of parts alike, the first named gets the last piece. */
const LATER = 1e-6;

/** Which piece each need gets, by index; undefined where none is left for it. */
export type Taken = readonly (number | undefined)[];

function costOf(need: Need, piece: Piece): number {
  const misfit = misfitOf(need.part, piece);
  if (misfit === null) return NOT_SERVED;
  return misfit + ("kit" in piece.source ? OPENING : 0);
}

/** Serves as many needs as the pieces can, and among such ways with those that suit best. */
export function takePieces(needs: readonly Need[], pieces: readonly Piece[]): Taken {
  const costs = needs.map((need, row) => {
    const line = new Float64Array(pieces.length + needs.length).fill(NOT_SERVED);
    for (const [column, piece] of pieces.entries()) line[column] = costOf(need, piece);
    line[pieces.length + row] = WITHOUT - row * LATER;
    return line;
  });
  return assign(costs).map((column) => (column < pieces.length ? column : undefined));
}
