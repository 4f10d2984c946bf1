import type { TappedAnswer } from "../../contract/measure/taps.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";

type Cell = TappedAnswer["cells"][number];

const decibels = (level: number) => `${Math.round(level)} dB`.replace("-", "−");

function heardWords({ sounds, level, clipped }: Cell): string {
  const word = sounds === null ? "not clear" : sounds ? "sounds" : "silent";
  const figure = level === null ? "" : ` (${decibels(level)}${clipped ? ", clipped" : ""})`;
  return `${word}${figure}`;
}

function phaseWords({ sounds, inPhase }: Cell): string {
  if (sounds === false) return "";
  if (inPhase === null) return "not told";
  return inPhase ? "as drawn" : "the other way";
}

const isAstray = ({ expected, sounds, inPhase }: Cell) => (sounds !== null && sounds !== expected) || inPhase === false;

function mapTable({ cells }: TappedAnswer): HTMLElement {
  const rows = cells.map((cell) => [
    `${cell.position}: ${cell.row}`,
    cell.expected ? "should sound" : "should be silent",
    isAstray(cell) ? h("b", {}, heardWords(cell)) : heardWords(cell),
    phaseWords(cell),
  ]);
  return plainTable("What sounds where", ["Row", "As drawn", "As tapped", "Swings"], rows);
}

/** What the taps say of a guard. */
export function tappedView(answer: TappedAnswer): HTMLElement {
  const list = (texts: readonly string[], className = "") =>
    h(
      "ul",
      { class: className },
      texts.map((text) => h("li", {}, text)),
    );
  return h(
    "div",
    { class: "stack tapped" },
    h("h4", {}, answer.title),
    answer.departures.length > 0 && list(answer.departures.map(({ message }) => message)),
    mapTable(answer),
    list(answer.notes, "hint"),
  );
}
