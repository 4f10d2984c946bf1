import type { ExaminedAnswer } from "../../contract/examine/examine-answer.ts";
import { nextCheckView } from "../bench/next-check-view.ts";
import { h } from "../dom/element.ts";
import { recordingsTable } from "../sound-card/measured-view.ts";
import type { Reading } from "../state/reading.ts";
import type { LugSpeech } from "../words/lug-speech.ts";
import { departuresView } from "./departures-view.ts";
import { partsFound } from "./parts-found.ts";
import { readingsView } from "./readings-view.ts";
import { sortsView } from "./sorts-view.ts";
import { takesView } from "./takes-view.ts";

const folded = (summary: string, ...content: (Node | false)[]) =>
  h("details", {}, h("summary", {}, summary), ...content);

/**
 * What a guard most likely is, what else it may be and what would tell, and what the takes say of its parts.
 * @param goNext shows the place of the next take; absent where there is no room for one
 * @param called what a person calls a recording
 */
export function examinedView(
  answer: ExaminedAnswer,
  reading: Reading,
  speech: LugSpeech,
  goNext: (() => void) | undefined,
  called: (file: string) => string,
): HTMLElement {
  const { notShown, notShownSorts, together, nextMeasurement, notes, priors, floor } = answer;
  const said = (texts: readonly string[]) =>
    h(
      "ul",
      {},
      texts.map((text) => h("li", {}, speech.say(text))),
    );
  return h(
    "div",
    { class: "stack examined" },
    h("h4", {}, speech.say(answer.title)),
    h("p", { class: "diagnosis" }, speech.say(answer.summary)),
    // A measurement is told with its fields below.
    answer.next !== nextMeasurement?.instruction && h("p", {}, h("b", {}, "Next: "), speech.say(answer.next)),
    goNext && h("div", { class: "buttons" }, h("button", { type: "button", onclick: goNext }, "Make that take")),
    nextMeasurement && nextCheckView(nextMeasurement, reading, { speech, over: "" }),
    readingsView(answer, speech),
    departuresView(answer, speech),
    takesView(answer, speech),
    partsFound(answer, speech),
    together.length > 0 && folded("What is told only together", said(together.map(({ message }) => message))),
    notShown.length > 0 &&
      folded(`What these takes cannot show: ${notShown.length} departures`, sortsView(notShownSorts, speech)),
    folded("What the recordings were like", recordingsTable(answer.recordings, called)),
    said(notes),
    folded("What this rests on", h("p", { class: "hint" }, `${priors} ${floor.source}`)),
  );
}
