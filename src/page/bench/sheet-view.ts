import type { SheetAnswer } from "../../contract/bench/bench.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import { tickItem } from "./ticks.ts";

const millimetres = (metres: number) => `${Math.round(metres * 1000)} mm`;

function cutTable(cuts: SheetAnswer["cuts"]): HTMLElement {
  const rows = cuts.map(({ connection, from, to, colour, cut, strip }) => [
    String(connection),
    colour,
    millimetres(cut),
    millimetres(strip),
    from,
    to,
  ]);
  return plainTable("Wires to cut", ["No.", "Colour", "Cut", "Strip each end", "From", "To"], rows);
}

function stageView(sheet: string, stage: SheetAnswer["stages"][number], index: number): HTMLElement {
  return h(
    "section",
    { class: "stage-sheet" },
    h("h4", {}, `${index + 1}. ${stage.title}`),
    h(
      "ul",
      { class: "ticks" },
      stage.joints.map(({ number, text }) => tickItem(sheet, `Joint ${number}. ${text}`)),
    ),
    stage.checks.length > 0 && h("p", { class: "hint" }, "Then check"),
    h(
      "ul",
      { class: "ticks" },
      stage.checks.map(({ text }) => tickItem(sheet, text)),
    ),
  );
}

/** The build sheet: preparations, wires to cut, joints in order with their checks. */
export function sheetView(title: string, { preparations, cuts, stages, notes }: SheetAnswer): HTMLElement {
  return h(
    "div",
    { class: "stack" },
    h("h3", {}, "Build sheet"),
    h(
      "ul",
      { class: "ticks" },
      preparations.map((text) => tickItem(title, text)),
    ),
    cutTable(cuts),
    stages.map((stage, index) => stageView(title, stage, index)),
    notes.map((text) => h("p", { class: "hint" }, text)),
  );
}
