import type { ExaminedAnswer } from "../../contract/examine/examine-answer.ts";
import { h } from "../dom/element.ts";
import type { LugSpeech } from "../words/lug-speech.ts";

/** Sort by sort: how many there are, what would show them, and a few of them. */
export function sortsView(sorts: ExaminedAnswer["notShownSorts"], speech: LugSpeech): HTMLElement {
  return h(
    "ul",
    {},
    sorts.map(({ title, count, examples, shownBy }) =>
      h(
        "li",
        {},
        h("b", {}, `${title}: ${count}. `),
        shownBy && speech.say(shownBy),
        h(
          "ul",
          { class: "hint" },
          examples.map((text) => h("li", {}, speech.say(text))),
        ),
      ),
    ),
  );
}
