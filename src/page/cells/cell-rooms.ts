import { Board } from "../board/board.ts";
import { keepBoard } from "../board/kept-board.ts";
import { settleBoard } from "../board/settled-cells.ts";
import { idle } from "../dom/breath.ts";
import type { AudioRoom } from "../listen/audio-room.ts";
import type { Listening } from "../listen/listening.ts";
import { openShelf } from "../shelf/open-shelf.ts";
import type { Bench } from "../start/bench.ts";
import { CellPlayer } from "./cell-player.ts";
import { GuardsOnHand } from "./guards-on-hand.ts";

/** What it takes to hear a page's guards. */
export interface Sounding {
  readonly room: AudioRoom;
  readonly listening: Listening;
}

/** What the listening board and the map share. */
export interface CellRooms extends Sounding {
  readonly bench: Bench;
  readonly onHand: GuardsOnHand;
  readonly player: CellPlayer;
  readonly board: Board;
  /** Calls the effect whenever guards of the shelf change. */
  shelfChanged(effect: () => void): Promise<void>;
}

export function createCellRooms(bench: Bench, { room, listening }: Sounding): CellRooms {
  const onHand = new GuardsOnHand(bench);
  const board = new Board();
  // Reading its guards would keep the list waiting. What cannot be read back leaves the board empty.
  void idle()
    .then(() => keepBoard(board, onHand))
    .catch(() => {});
  const shelfChanged = async (effect: () => void) => void (await openShelf()).subscribe(() => effect());
  void shelfChanged(() => void settleBoard(board, onHand).catch(() => {}));
  return {
    bench,
    room,
    listening,
    onHand,
    player: new CellPlayer(bench.store, room, listening),
    board,
    shelfChanged,
  };
}
