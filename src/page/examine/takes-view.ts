import type { ExaminedAnswer } from "../../contract/examine/examine-answer.ts";
import { h } from "../dom/element.ts";
import { createLazy } from "../dom/lazy.ts";
import type { LugSpeech } from "../words/lug-speech.ts";

type Take = ExaminedAnswer["takes"][number];

/** The plot's code is loaded when a take is opened. */
function takeFold(take: Take, speech: LugSpeech): HTMLElement {
  const lazy = createLazy(async () => (await import("./take-plot.ts")).createTakePlot(take));
  const verdict = take.agrees ? "agrees with the drawing" : "does not agree with the drawing";
  const element = h(
    "details",
    { class: take.agrees ? "take is-agreeing" : "take is-astray" },
    h("summary", {}, speech.say(take.title), ": ", take.agrees ? verdict : h("b", {}, verdict)),
    lazy.element,
  );
  element.addEventListener("toggle", () => element.open && lazy.open());
  // What is not being loaded yet must not read as if it were.
  lazy.element.querySelector(".loading")?.classList.remove("loading");
  return element;
}

/** Each take: whether it agrees, and opened the curve that it is, beside that of the drawing. */
export function takesView({ takes }: ExaminedAnswer, speech: LugSpeech): HTMLElement {
  return h(
    "div",
    {},
    h("h4", {}, "Take by take"),
    takes.map((take) => takeFold(take, speech)),
  );
}
