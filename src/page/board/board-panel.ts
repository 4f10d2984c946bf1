import { type Cell, cellName } from "../cells/cell.ts";
import type { CellRooms } from "../cells/cell-rooms.ts";
import { h, replaceContent } from "../dom/element.ts";
import { keepingFocus } from "../dom/keeping-focus.ts";
import { whileShown } from "../dom/later.ts";
import { savesData } from "../dom/thrift.ts";
import { createThroughWords } from "../listen/chain/through-words.ts";
import { BOARD_KEYS, MOST_ON_BOARD } from "./board.ts";
import { BoardFigures } from "./board-figures.ts";
import { listenForBoardKeys } from "./board-listening.ts";
import { BoardPlot } from "./board-plot.ts";
import { boardTable } from "./board-table.ts";
import { createNamingPanel } from "./naming-panel.ts";
import { createCellPicker } from "./pick-cells.ts";

const EMPTY = `Nothing on the board yet. Choose up to ${MOST_ON_BOARD} cells above, from any guard; each gets a key, and another one takes over at the same place of the phrase, equally loud.`;

function hint(): HTMLElement {
  return h(
    "p",
    { class: "hint" },
    `Keys ${BOARD_KEYS.join(" ")} switch from the board, arrows go on and back, Esc stops. All play equally loud; the table tells how loud they are of themselves (level: loudness of a strummed chord, K-weighting; hum: beside one usual single coil; brightness: where the middle of its loudness lies).`,
  );
}

/** Any cells of any guards against each other. */
export function createBoardPanel(rooms: CellRooms): HTMLElement {
  const { board, player, onHand, bench } = rooms;
  const told = h("p", { class: "hint", role: "status" });
  const table = h("div", {});
  const frame = h("div", { class: "board-plot", role: "img", "aria-label": "Curves of the cells on the board" });
  const plot = new BoardPlot(frame);
  const figures = new BoardFigures(bench.store);
  const say = (error: unknown) => {
    told.textContent = (error as Error).message;
  };
  const press = () => {
    for (const button of table.querySelectorAll<HTMLElement>("[data-cell]"))
      button.setAttribute("aria-pressed", String(button.dataset.cell === player.current));
  };
  const play = (cell: Cell) => {
    if (player.current === cell.key) player.stop();
    else player.play(cell).catch(say);
  };
  const showCurves = () =>
    plot.show(
      board.cells.flatMap((cell, index) => {
        const found = figures.of(cell);
        return found ? [{ key: BOARD_KEYS[index]!, index, magnitude: found.magnitude }] : [];
      }),
    );
  const draw = () => {
    const { cells } = board;
    const rows = cells.map((cell) => ({ cell, figures: figures.of(cell) }));
    keepingFocus(table, "cell", () =>
      replaceContent(
        table,
        cells.length === 0 ? h("p", {}, EMPTY) : boardTable(rows, { play, remove: ({ key }) => board.remove(key) }),
      ),
    );
    press();
    frame.hidden = cells.length === 0;
    showCurves();
  };
  const renew = async () => {
    draw();
    if ((await figures.complete(board.cells, draw)) && !savesData()) await player.prepare(board.cells);
  };
  const take = (cells: readonly Cell[]) => {
    const taken = board.add(cells);
    const left = cells.length - taken;
    told.textContent =
      left > 0
        ? `The board has ${MOST_ON_BOARD} places; ${left} ${left === 1 ? "cell" : "cells"} found none.`
        : `On the board: ${cells.length === 1 ? cellName(cells[0]!) : `${cells.length} cells`}.`;
  };
  const picker = createCellPicker(bench.store, onHand, { take, failed: say });
  const naming = createNamingPanel(rooms);
  const playing = h("div", { class: "stack" }, table, frame);
  const element = h(
    "div",
    { class: "stack board" },
    picker.element,
    told,
    hint(),
    createThroughWords(bench.store),
    playing,
    h("details", { class: "plain-fold" }, h("summary", {}, "Blind: name which is playing"), naming),
  );
  const focusOn = ({ key }: Cell) => {
    const button = [...table.querySelectorAll<HTMLElement>("[data-cell]")].find(({ dataset }) => dataset.cell === key);
    button?.focus();
  };
  listenForBoardKeys(element, naming, { board, player, focusOn, failed: say });
  const refresh = whileShown(element, async () => {
    try {
      picker.show(await onHand.names());
    } catch (error) {
      say(error);
    }
  });
  bench.store.watchAny(({ reading }) => [reading], refresh);
  void rooms.shelfChanged(refresh);
  bench.store.watchAny(
    ({ hand, stringAge }) => [hand, stringAge],
    () => {
      figures.clear();
      void renew().catch(say);
    },
  );
  board.watch(() => void renew().catch(say));
  player.watch(press);
  element.addEventListener("shown", showCurves);
  return element;
}
