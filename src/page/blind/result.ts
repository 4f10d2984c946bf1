import { h } from "../dom/element.ts";
import { guessingProbability, percentText, verdictText } from "./guessing.ts";
import type { Trials } from "./trials.ts";

/** Count, probability and what it means. */
export function resultOf({ right, count }: Trials): HTMLElement {
  const probability = percentText(guessingProbability(right, count));
  return h(
    "div",
    { class: "blind-result", role: "status" },
    h("p", { class: "big-figure" }, `${right} of ${count} right.`),
    h("p", {}, `Somebody who only guesses gets at least ${right} right in ${probability} of such tests.`),
    h("p", { class: "verdict" }, verdictText(right, count)),
  );
}
