import { type Cell, cellOf, ON_BENCH } from "../cells/cell.ts";
import type { GuardsOnHand } from "../cells/guards-on-hand.ts";
import { markOfSource } from "../shelf/same-guard.ts";
import type { Board } from "./board.ts";

/** Has cells of a guard that was on the bench, and is on the shelf now, as that one's: else it would be two guards. */
export async function settleBoard(board: Board, onHand: GuardsOnHand): Promise<void> {
  const moved = new Map<string, Cell>();
  for (const cell of board.cells) {
    if (cell.guard.id !== ON_BENCH) continue;
    const name = await onHand.withMark(markOfSource(cell.guard.reading.source));
    if (name && name.id !== ON_BENCH) moved.set(cell.key, cellOf({ ...cell.guard, ...name }, cell.settings));
  }
  board.exchange(moved);
}
