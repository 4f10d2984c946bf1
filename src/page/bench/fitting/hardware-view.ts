import type { HardwareAnswer } from "../../../contract/bench/bench.ts";
import { capitalised, listed } from "../../../english.ts";
import { h } from "../../dom/element.ts";
import { plainTable } from "../../dom/table.ts";
import type { LugSpeech } from "../../words/lug-speech.ts";

/** Screws, nuts, knobs and what is used up. */
export function hardwareView(hardware: HardwareAnswer, speech: LugSpeech): HTMLElement {
  const rows = hardware.map(({ what, quantity, for: parts, note }) => [
    capitalised(what),
    quantity === null ? "as needed" : String(quantity),
    parts.length === 0 ? "the guard" : listed(parts.map((part) => speech.words.parts.get(part) ?? part)),
    note ?? "–",
  ]);
  return h(
    "section",
    { class: "stack", "aria-label": "Hardware" },
    h("h3", {}, "Hardware"),
    h("p", { class: "hint" }, "How such parts usually come: common practice, no source. Count yours."),
    plainTable("Screws, nuts, knobs and what is used up", ["What", "How many", "For", "Note"], rows),
  );
}
