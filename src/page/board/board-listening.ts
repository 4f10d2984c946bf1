import type { Cell } from "../cells/cell.ts";
import type { CellPlayer } from "../cells/cell-player.ts";
import type { Board } from "./board.ts";
import { askedByKey } from "./board-keys.ts";

interface Listened {
  readonly board: Board;
  readonly player: CellPlayer;
  focusOn(cell: Cell): void;
  failed(error: unknown): void;
}

/** Where a step from what plays leads, round the board's end; from nothing to the first or the last. */
function stepped(cells: readonly Cell[], current: string | undefined, by: 1 | -1): Cell | undefined {
  const at = cells.findIndex(({ key }) => key === current);
  if (at < 0) return by === 1 ? cells[0] : cells.at(-1);
  return cells[(at + by + cells.length) % cells.length];
}

/** Plays by key, while the panel is shown and nothing is written in. @param apart what has keys of its own */
export function listenForBoardKeys(element: HTMLElement, apart: HTMLElement, listened: Listened): void {
  const { board, player, focusOn, failed } = listened;
  const step = (by: 1 | -1) => {
    const next = stepped(board.cells, player.current, by);
    if (!next) return;
    player.play(next).catch(failed);
    focusOn(next);
  };
  element.addEventListener("keydown", (event) => {
    if (apart.contains(event.target as Node)) return;
    const asked = askedByKey(event);
    if (asked === undefined) return;
    if (asked === "stop") player.stop();
    else if ("step" in asked) step(asked.step);
    else if (board.cells[asked.place]) player.play(board.cells[asked.place]!).catch(failed);
    event.preventDefault();
  });
}
