import type { Controls } from "../../build-file/settings.ts";
import type { DiagnoseAnswer, ExplanationAnswer } from "../../contract/diagnose.ts";
import { percentText } from "../blind/guessing.ts";
import { h } from "../dom/element.ts";
import type { LugSpeech } from "../words/lug-speech.ts";
import { nextCheckView } from "./next-check-view.ts";

const SHOWN = 5;
/** Of explanations that read alike, so many stand openly; the rest can be unfolded. */
const SHOWN_ALIKE = 6;
/** Less likely than this is hardly likely; less than a tenth of it is not worth a line. */
const HARDLY_LIKELY = 0.01;
const HOPELESS = 0.001;

/** Kinds of answer that explain nothing, and so have neither fit nor probability to show. */
const NO_EXPLANATIONS: readonly string[] = ["unexplained", "nothing-measured"];

function explainsNothing({ faults }: ExplanationAnswer): boolean {
  return faults.some(({ kind }) => NO_EXPLANATIONS.includes(kind));
}

/** What is worth a line: without the hopeless, unless nothing better is known. */
export function worthTelling(explanations: readonly ExplanationAnswer[]): ExplanationAnswer[] {
  const likely = explanations.filter((each) => explainsNothing(each) || each.probability >= HOPELESS);
  const isAllThereIs = likely.every(explainsNothing);
  return (isAllThereIs ? [...explanations] : likely).slice(0, SHOWN);
}

/** "62 % likely, fits the readings to 80 %". */
export function likelihoodText({ probability, fit }: Pick<ExplanationAnswer, "probability" | "fit">): string {
  if (probability === 0) return "Comes nearest, but leaves a reading unexplained";
  const likely = probability < HARDLY_LIKELY ? "Hardly likely" : `${percentText(probability)} likely`;
  return `${likely}, fits the readings to ${percentText(fit)}`;
}

function alikeList(messages: readonly string[], speech: LugSpeech): HTMLElement {
  return h(
    "ul",
    {},
    messages.map((message) => h("li", {}, speech.say(message))),
  );
}

function explanationItem(explanation: ExplanationAnswer, speech: LugSpeech): HTMLElement {
  const { message, sameAs } = explanation;
  const alike = [message, ...sameAs.map((each) => each.message)];
  const figures = !explainsNothing(explanation) && h("b", {}, `${likelihoodText(explanation)}: `);
  if (sameAs.length === 0) return h("li", {}, h("p", {}, figures, speech.say(message)));
  return h(
    "li",
    {},
    h("p", {}, figures, "one of these, which read exactly the same, the commonest cause first:"),
    alikeList(alike.slice(0, SHOWN_ALIKE), speech),
    alike.length > SHOWN_ALIKE &&
      h(
        "details",
        {},
        h("summary", {}, `${alike.length - SHOWN_ALIKE} more that read the same`),
        alikeList(alike.slice(SHOWN_ALIKE), speech),
      ),
  );
}

/** What may be wrong, likeliest first, and what to measure next. */
export function diagnosisView(
  { explanations, notes, nextMeasurement }: DiagnoseAnswer,
  controls: Controls,
  speech: LugSpeech,
): HTMLElement {
  return h(
    "div",
    { class: "stack" },
    h(
      "ol",
      { class: "explanations" },
      worthTelling(explanations).map((each) => explanationItem(each, speech)),
    ),
    notes.map((note) => h("p", { class: "hint" }, speech.say(note))),
    nextMeasurement && nextCheckView(nextMeasurement, controls, speech),
  );
}
