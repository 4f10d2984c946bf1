import { showQuantity } from "../../build-file/show-quantity.ts";
import type { ExaminedAnswer } from "../../contract/examine/examine-answer.ts";
import { nextCheckView } from "../bench/next-check-view.ts";
import { percentText } from "../blind/guessing.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import { recordingsTable } from "../sound-card/measured-view.ts";
import type { Reading } from "../state/reading.ts";
import type { LugSpeech } from "../words/lug-speech.ts";

type Departure = ExaminedAnswer["departures"][number];
type Part = ExaminedAnswer["parts"][number];

const SHOWN_ALIKE = 5;
/** Less likely than this is hardly likely. */
const HARDLY_LIKELY = 0.01;

const likely = (probability: number) =>
  probability < HARDLY_LIKELY ? "hardly likely" : `${percentText(probability)} likely`;

function departureItem({ title, message, probability, fit, sameAs, alike, next }: Departure, speech: LugSpeech) {
  return h(
    "li",
    {},
    h("p", {}, h("b", {}, speech.say(title)), ` ${likely(probability)}, fits the takes to ${percentText(fit)}.`),
    h("p", {}, speech.say(message)),
    sameAs.length > 0 &&
      h(
        "details",
        {},
        h("summary", {}, `None of these takes can tell more from it: ${alike}`),
        h(
          "ul",
          {},
          sameAs.slice(0, SHOWN_ALIKE).map((each) => h("li", {}, speech.say(each.message))),
        ),
        sameAs.length > SHOWN_ALIKE && h("p", { class: "hint" }, "And others of these kinds."),
      ),
    h("p", { class: "hint" }, speech.say(next)),
  );
}

type Dimension = Parameters<typeof showQuantity>[1];

/** What a field of a part is measured in. */
const DIMENSIONS: Readonly<Record<string, Dimension>> = {
  resistance: "resistance",
  measured: "resistance",
  capacitance: "capacitance",
  inductance: "inductance",
  loss: "resistance",
};

function shown(value: number, field: string, digits: number): string {
  const dimension = DIMENSIONS[field.split(".").at(-1)!];
  return dimension ? showQuantity(value, dimension, digits) : String(Number(value.toPrecision(digits)));
}

function partRow({ title, field, drawn, value, standardError, told }: Part, speech: LugSpeech) {
  return [
    speech.say(title),
    shown(drawn, field, 3),
    `${shown(value, field, 3)} ± ${shown(standardError, field, 2)}`,
    told === "takes" ? "these takes" : "no more than its tolerance",
  ];
}

function partsTable({ parts }: ExaminedAnswer, speech: LugSpeech): HTMLElement {
  const sorted = [...parts].sort((a, b) => Number(a.told === "tolerance") - Number(b.told === "tolerance"));
  return plainTable(
    "The parts' values, as the best answer has them",
    ["Part", "Drawn", "Found", "Told by"],
    sorted.map((part) => partRow(part, speech)),
  );
}

function takesTable({ takes }: ExaminedAnswer): HTMLElement {
  const rows = takes.map(({ title, agrees }) => [title, agrees ? "agrees with the drawing" : "does not agree"]);
  return plainTable("Take by take", ["Take", "As drawn"], rows);
}

const folded = (summary: string, ...content: (Node | false)[]) =>
  h("details", {}, h("summary", {}, summary), ...content);

/**
 * What a guard most likely is, what else it may be and what would tell, and what the takes say of its parts.
 * @param addNext makes a place for the next take; absent where there is no room for one
 * @param called what a person calls a recording
 */
export function examinedView(
  answer: ExaminedAnswer,
  reading: Reading,
  speech: LugSpeech,
  addNext: (() => void) | undefined,
  called: (file: string) => string,
): HTMLElement {
  const { departures, remainder, notShown, together, nextMeasurement, notes, priors, floor } = answer;
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
    addNext && h("div", { class: "buttons" }, h("button", { type: "button", onclick: addNext }, "Make that take")),
    nextMeasurement && nextCheckView(nextMeasurement, reading, { speech, over: "" }),
    h("h4", {}, "What it may be"),
    h(
      "ol",
      { class: "explanations" },
      departures.map((each) => departureItem(each, speech)),
    ),
    h("p", { class: "hint" }, `${likely(remainder.probability)}: ${remainder.message}`),
    takesTable(answer),
    partsTable(answer, speech),
    together.length > 0 && folded("What is told only together", said(together.map(({ message }) => message))),
    notShown.length > 0 &&
      folded(
        `What these takes cannot show: ${notShown.length} departures`,
        said(notShown.map(({ message }) => message)),
      ),
    recordingsTable(answer.recordings, called),
    said(notes),
    h("p", { class: "hint" }, `${priors} ${floor.source}`),
  );
}
