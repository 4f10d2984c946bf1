import { byDegree, picked } from "./elimination-order.ts";
import type { Pencil } from "./pencil.ts";

/** A branch solved for its own current: i = (v(plus) − v(minus)) / Z, with Z = z0 + s·z1. */
interface LoneBranch {
  readonly row: number;
  /** Positions among the kept unknowns; −1 is a reference. */
  readonly plus: number;
  readonly minus: number;
  readonly z0: number;
  readonly z1: number;
}

/**
 * A pencil without the currents of branches that no mutual inductance couples: each is an admittance between its nodes, so
 * that the system to be solved has hardly more unknowns than nodes (a Schur complement with a diagonal block).
 */
export interface CompactPencil {
  readonly size: number;
  readonly g: Float64Array;
  readonly c: Float64Array;
  readonly lone: readonly LoneBranch[];
  /** Position of an unknown of the whole pencil among those kept, or −1. */
  readonly positionOf: Int32Array;
}

function isLone(pencil: Pencil, row: number): boolean {
  const { size, c } = pencil;
  for (let column = 0; column < size; column++) if (column !== row && c[row * size + column] !== 0) return false;
  return true;
}

/** Takes the uncoupled branches out of a pencil. */
export function compactPencil(pencil: Pencil): CompactPencil {
  const { size, voltageCount, g, c, parameterRow } = pencil;
  const variableRows = new Set([...parameterRow.values()].map(({ row }) => row));
  const isEliminated = (row: number) => row >= voltageCount && !variableRows.has(row) && isLone(pencil, row);
  const rows = Array.from({ length: size }, (_, row) => row);
  const kept = byDegree(
    pencil,
    rows.filter((row) => !isEliminated(row)),
  );
  const positionOf = new Int32Array(size).fill(-1);
  for (const [position, row] of kept.entries()) positionOf[row] = position;
  const lone = rows.filter(isEliminated).map((row) => {
    const columnWith = (value: number) =>
      rows.findIndex((column) => column !== row && g[row * size + column] === value);
    const [plus, minus] = [columnWith(1), columnWith(-1)];
    return {
      row,
      plus: plus < 0 ? -1 : positionOf[plus]!,
      minus: minus < 0 ? -1 : positionOf[minus]!,
      z0: -g[row * size + row]!,
      z1: -c[row * size + row]!,
    };
  });
  return { size: kept.length, g: picked(g, size, kept), c: picked(c, size, kept), lone, positionOf };
}
