import { type Cell, cellName } from "../cells/cell.ts";
import type { CellFigures } from "../cells/cell-figures.ts";
import { markSign } from "../cells/mark-sign.ts";
import { showDb, showHum, showHz } from "../curves/units.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import { BOARD_KEYS } from "./board.ts";

export interface BoardRow {
  readonly cell: Cell;
  /** Undefined until they are worked out. */
  readonly figures: CellFigures | undefined;
}

const HEAD = ["Cell", "Sounds", "Peak", "Level", "Hum", "Brightness", ""];
const WAITING = "…";

function levelText({ loudnessLu }: CellFigures, loudest: number): string {
  if (loudnessLu === null) return "silent";
  const below = loudest - loudnessLu;
  return below < 0.05 ? "the loudest" : `${below.toFixed(1)} LU softer`;
}

function figureTexts(figures: CellFigures | undefined, loudest: number): string[] {
  if (!figures) return HEAD.slice(1, -1).map(() => WAITING);
  const { label, peak, hum, brightnessHz } = figures;
  return [
    label,
    peak ? `${showHz(peak.frequency)}, ${showDb(peak.level)}` : "none",
    levelText(figures, loudest),
    showHum(hum),
    brightnessHz === null ? "silent" : showHz(brightnessHz),
  ];
}

/** The cells of the board with their figures; the button of each plays it. */
export function boardTable(
  rows: readonly BoardRow[],
  { play, remove }: { readonly play: (cell: Cell) => void; readonly remove: (cell: Cell) => void },
): HTMLElement {
  const loudest = Math.max(...rows.map(({ figures }) => figures?.loudnessLu ?? Number.NEGATIVE_INFINITY));
  const lines = rows.map(({ cell, figures }, index) => [
    h(
      "button",
      {
        type: "button",
        class: "board-cell",
        "data-cell": cell.key,
        "aria-pressed": "false",
        "aria-keyshortcuts": BOARD_KEYS[index],
        onclick: () => play(cell),
      },
      h("kbd", {}, BOARD_KEYS[index]),
      markSign(index),
      ` ${cellName(cell)}`,
    ),
    ...figureTexts(figures, loudest),
    h(
      "button",
      {
        type: "button",
        class: "quiet",
        "aria-label": `Take off ${cellName(cell)}`,
        onclick: () => remove(cell),
      },
      "Take off",
    ),
  ]);
  return plainTable("On the board", HEAD, lines);
}
