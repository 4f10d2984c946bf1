import type { RawSettings } from "../../build-file/settings.ts";
import { h, replaceContent } from "../dom/element.ts";
import { latestOnly, whileShown } from "../dom/later.ts";
import type { Bench } from "../start/bench.ts";
import { fitSettings } from "../state/fit-settings.ts";
import type { Reading } from "../state/reading.ts";
import { type Cells, cellsOf } from "./cells.ts";
import type { Listening } from "./listening.ts";

const MOVES: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

interface Grid {
  readonly cells: Cells;
  readonly buttons: readonly (readonly HTMLButtonElement[])[];
  /** Beside each row's heading: what sounds there. */
  readonly words: readonly HTMLElement[];
}

function listenForArrows(buttons: Grid["buttons"]): void {
  for (const [row, line] of buttons.entries())
    for (const [column, button] of line.entries())
      button.addEventListener("keydown", (event) => {
        const move = MOVES[event.key];
        const next = move && buttons[row + move[0]]?.[column + move[1]];
        if (!next) return;
        event.preventDefault();
        next.focus();
      });
}

function createButtons(cells: Cells, choose: (settings: RawSettings) => void): Grid["buttons"] {
  const buttons = cells.rows.map((row) =>
    cells.columns.map((column) =>
      h(
        "button",
        {
          type: "button",
          class: "cell",
          "aria-label": `Play ${row.label}, ${column.label}`,
          onclick: () => choose({ ...row.settings, ...column.settings }),
        },
        column.label.replace("tone ", ""),
      ),
    ),
  );
  listenForArrows(buttons);
  return buttons;
}

function table({ cells, buttons, words }: Grid): HTMLElement {
  return h(
    "table",
    { class: "cell-table" },
    h(
      "caption",
      { class: "hint" },
      h("span", {}, "Choose a cell to hear it. While it plays, another cell takes over at the same place."),
    ),
    h(
      "tbody",
      {},
      cells.rows.map((row, index) =>
        h(
          "tr",
          {},
          h("th", { scope: "row" }, row.label, words[index]),
          buttons[index]!.map((button) => h("td", {}, button)),
        ),
      ),
    ),
  );
}

function pressCurrent({ cells, buttons }: Grid, reading: Reading, settings: RawSettings): void {
  const current = JSON.stringify(settings);
  for (const [row, line] of buttons.entries())
    for (const [column, button] of line.entries()) {
      const own = { ...settings, ...cells.rows[row]!.settings, ...cells.columns[column]!.settings };
      button.setAttribute("aria-pressed", String(JSON.stringify(fitSettings(reading, own)) === current));
    }
}

/** Every position × tone, each a button that plays it. */
export function createCellGrid({ store, editor, engine }: Bench, listening: Listening): HTMLElement {
  const frame = h("div", { class: "cell-frame", tabindex: 0, role: "group", "aria-label": "All settings" });
  const latest = latestOnly();
  let grid: Grid | undefined;
  const choose = (settings: RawSettings) => {
    editor.turnAll(settings);
    if (store.state.playing === "no") void listening.play();
  };
  store.watch(
    (state) => [state.reading],
    (reading) => {
      if (!reading) return;
      const isLatest = latest();
      const cells = cellsOf(reading);
      const words = cells.rows.map(() => h("span", { class: "hint" }));
      grid = { cells, buttons: createButtons(cells, choose), words };
      replaceContent(frame, table(grid));
      const rows = cells.rows.map((row) => fitSettings(reading, { ...store.state.settings, ...row.settings }));
      void engine.labels(reading, rows).then((labels) => {
        if (!isLatest()) return;
        for (const [index, word] of words.entries()) word.textContent = labels[index]!;
      });
    },
  );
  const showCurrent = whileShown(frame, () => {
    const { reading, settings } = store.state;
    if (reading && grid) pressCurrent(grid, reading, settings);
  });
  store.watchAny((state) => [state.reading, state.settings], showCurrent);
  return frame;
}
