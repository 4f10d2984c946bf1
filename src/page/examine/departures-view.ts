import type { ExaminedAnswer } from "../../contract/examine/examine-answer.ts";
import { capitalised } from "../../english.ts";
import { percentText } from "../blind/guessing.ts";
import { h } from "../dom/element.ts";
import type { LugSpeech } from "../words/lug-speech.ts";
import { sortsView } from "./sorts-view.ts";

type Departure = ExaminedAnswer["departures"][number];

/** Less likely than this is hardly likely. */
const HARDLY_LIKELY = 0.01;
/** Where takes come no nearer than this, nobody asks how near. */
const FITS = 0.001;

export const likely = (probability: number): string =>
  probability < HARDLY_LIKELY ? "hardly likely" : `${percentText(probability)} likely`;

const fitting = (fit: number): string =>
  fit < FITS ? "does not fit the takes" : `fits the takes to ${percentText(fit)}`;

function alikeFold({ sorts }: Departure, speech: LugSpeech): HTMLElement | false {
  return (
    sorts.length > 0 &&
    h("details", {}, h("summary", {}, "What none of these takes can tell from it"), sortsView(sorts, speech))
  );
}

function departureItem(departure: Departure, speech: LugSpeech): HTMLElement {
  const { title, message, probability, fit, next } = departure;
  return h(
    "li",
    {},
    h("p", {}, h("b", {}, speech.say(title)), `: ${likely(probability)}, ${fitting(fit)}.`),
    h("p", {}, speech.say(message)),
    alikeFold(departure, speech),
    h("p", { class: "hint" }, speech.say(next)),
  );
}

/** How many of the answers stand openly. */
const SHOWN = 3;

/** What a guard may be, the likelier first; all but the first few folded away. */
export function departuresView({ departures, remainder }: ExaminedAnswer, speech: LugSpeech): HTMLElement {
  const listOf = (all: readonly Departure[], start: number) =>
    h(
      "ol",
      { class: "explanations", start },
      all.map((each) => departureItem(each, speech)),
    );
  const rest = departures.slice(SHOWN);
  return h(
    "div",
    { class: "stack" },
    h("h4", {}, "What it may be"),
    listOf(departures.slice(0, SHOWN), 1),
    rest.length > 0 && h("details", {}, h("summary", {}, `${rest.length} less likely`), listOf(rest, SHOWN + 1)),
    h("p", { class: "hint" }, `${remainder.message} ${capitalised(likely(remainder.probability))}.`),
  );
}
