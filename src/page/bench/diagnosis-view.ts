import type { DiagnoseAnswer, ExplanationAnswer } from "../../contract/diagnose.ts";
import { percentText } from "../blind/guessing.ts";
import { h } from "../dom/element.ts";
import type { Reading } from "../state/reading.ts";
import type { LugSpeech } from "../words/lug-speech.ts";
import { type HowSaid, nextCheckView } from "./next-check-view.ts";

const SHOWN = 5;
/** Of explanations that read alike, so many are told; the rest are counted by their kinds. */
const SHOWN_ALIKE = 4;
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

function explanationItem(explanation: ExplanationAnswer, speech: LugSpeech): HTMLElement {
  const { message, sameAs, alike } = explanation;
  const figures = !explainsNothing(explanation) && h("b", {}, `${likelihoodText(explanation)}: `);
  if (sameAs.length === 0) return h("li", {}, h("p", {}, figures, speech.say(message)));
  const all = [message, ...sameAs.map((each) => each.message)];
  return h(
    "li",
    {},
    h("p", {}, figures, "one of these, which nothing told can tell apart, the commonest first:"),
    h(
      "ul",
      {},
      all.slice(0, SHOWN_ALIKE).map((each) => h("li", {}, speech.say(each))),
    ),
    all.length > SHOWN_ALIKE && h("p", { class: "hint" }, `Beside the first these are ${alike}.`),
  );
}

/** What it most likely is and what to do next; what else it may be is folded away. */
export function diagnosisView(
  { summary, explanations, remainder, priors, notes, nextMeasurement }: DiagnoseAnswer,
  reading: Reading,
  said: HowSaid,
): HTMLElement {
  const { speech } = said;
  return h(
    "div",
    { class: "stack" },
    h(
      "p",
      { class: "diagnosis" },
      speech.say(nextMeasurement ? summary.replace(nextMeasurement.instruction, "") : summary),
    ),
    nextMeasurement && nextCheckView(nextMeasurement, reading, said),
    notes.map((note) => h("p", { class: "hint" }, speech.say(note))),
    h(
      "details",
      {},
      h("summary", {}, "What else it may be, and how likely"),
      h(
        "ol",
        { class: "explanations" },
        worthTelling(explanations).map((each) => explanationItem(each, speech)),
      ),
      h("p", { class: "hint" }, `${remainder.message} ${priors}`),
    ),
  );
}
