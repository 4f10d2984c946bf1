import type { MountingAnswer } from "../../../contract/bench/bench.ts";
import { listed } from "../../../english.ts";
import { h } from "../../dom/element.ts";
import type { LugSpeech } from "../../words/lug-speech.ts";
import { tickItem } from "../ticks.ts";
import { acceptanceTable } from "./acceptance-table.ts";

type Step = MountingAnswer["before"][number];

function stepItem(guard: string, { title, text, parts }: Step, speech: LugSpeech): HTMLElement {
  const words = parts.map((part) => speech.words.parts.get(part) ?? part);
  return tickItem(guard, `${title}: ${parts.join()}`, [
    h("b", {}, `${title}. `),
    speech.say(text),
    words.length > 0 && h("small", { class: "hint" }, ` For ${listed(words)}.`),
  ]);
}

function stepsView(guard: string, heading: string, steps: readonly Step[], speech: LugSpeech): HTMLElement {
  return h(
    "section",
    { class: "stack", "aria-label": heading },
    h("h3", {}, heading),
    h(
      "ul",
      { class: "ticks" },
      steps.map((step) => stepItem(guard, step, speech)),
    ),
    steps.map(({ readings }) => readings && acceptanceTable(guard, readings, speech)),
  );
}

/** A build sheet between what is fitted before the first wire and how the guard is closed after the last. */
export function withMounting(
  guard: string,
  { before, closing }: MountingAnswer,
  speech: LugSpeech,
  sheet: HTMLElement,
): HTMLElement {
  return h(
    "div",
    { class: "stack" },
    stepsView(guard, "Mounting, before the first wire", before, speech),
    sheet,
    stepsView(guard, "Closing the guard", closing, speech),
  );
}
