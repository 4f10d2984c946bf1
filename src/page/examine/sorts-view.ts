import { h } from "../dom/element.ts";
import type { LugSpeech } from "../words/lug-speech.ts";

/** A sort of departures that the takes cannot show. */
export interface Sort {
  readonly title: string;
  readonly count: number;
  readonly examples: readonly string[];
  /** The take or reading that would show most of them. */
  readonly shownBy: string | null;
}

/** Sort by sort: how many there are, what would show them, and a few of them. */
export function sortsView(sorts: readonly Sort[], speech: LugSpeech): HTMLElement {
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
