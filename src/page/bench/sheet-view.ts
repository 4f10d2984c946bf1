import type { SheetAnswer } from "../../contract/bench/bench.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import type { LugSpeech } from "../words/lug-speech.ts";
import { tickItem } from "./ticks.ts";

const millimetres = (metres: number) => `${Math.round(metres * 1000)} mm`;

function cutTable(cuts: SheetAnswer["cuts"], speech: LugSpeech): HTMLElement {
  const rows = cuts.map(({ connection, from, to, colour, cut, strip }) => [
    String(connection),
    colour,
    millimetres(cut),
    millimetres(strip),
    speech.say(from),
    speech.say(to),
  ]);
  return plainTable("Wires to cut", ["No.", "Colour", "Cut", "Strip each end", "From", "To"], rows);
}

interface Sheet {
  readonly title: string;
  readonly speech: LugSpeech;
}

function step({ title, speech }: Sheet, text: string): HTMLElement {
  return tickItem(title, text, speech.say(text));
}

function stageView(sheet: Sheet, stage: SheetAnswer["stages"][number], index: number): HTMLElement {
  return h(
    "section",
    { class: "stage-sheet" },
    h("h4", {}, `${index + 1}. ${stage.title}`),
    h(
      "ul",
      { class: "ticks" },
      stage.joints.map(({ number, text }) => step(sheet, `Joint ${number}. ${text}`)),
    ),
    stage.checks.length > 0 && h("p", { class: "hint" }, "Then check"),
    h(
      "ul",
      { class: "ticks" },
      stage.checks.map(({ text }) => step(sheet, text)),
    ),
  );
}

/** The build sheet: preparations, wires to cut, joints in order with their checks. */
export function sheetView(
  title: string,
  { preparations, cuts, stages, notes }: SheetAnswer,
  speech: LugSpeech,
): HTMLElement {
  const sheet = { title, speech };
  return h(
    "div",
    { class: "stack" },
    h("h3", {}, "Build sheet"),
    h(
      "ul",
      { class: "ticks" },
      preparations.map((text) => step(sheet, text)),
    ),
    cutTable(cuts, speech),
    stages.map((stage, index) => stageView(sheet, stage, index)),
    notes.map((text) => h("p", { class: "hint" }, speech.say(text))),
  );
}
