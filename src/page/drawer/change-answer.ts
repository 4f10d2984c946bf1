import { showQuantity } from "../../build-file/show-quantity.ts";
import type { HeardChangeAnswer } from "../../contract/heard-change.ts";
import { createCautions } from "../bench/cautions.ts";
import { named } from "../builds/difference-words.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import type { BuildSource } from "../state/reading.ts";

const SHOWN = 12;

/** A setting's label with its push-pulls as a person calls them. */
function settingWords(label: string, words: (name: string) => string): string {
  return label.replaceAll(/\b(\w+)\.s\b/g, (_, name: string) => `${words(name)} push-pull`);
}

type Put = HeardChangeAnswer["heard"][number]["to"];

/** What goes in; of pots alike each is told by what it measured. */
function putWords({ what, measured }: Put): string {
  return measured === undefined ? what : `${what}, measured ${showQuantity(measured, "resistance")}`;
}

/** Exchanges of one part that are heard, the cheapest first. @param put takes one over */
export function changeView(
  { heard, tried, possible, unheard, basis }: HeardChangeAnswer,
  words: (name: string) => string,
  currency: string,
  put: (build: BuildSource) => void,
): HTMLElement {
  const tally =
    `${tried === possible ? `All ${possible}` : `${tried} of ${possible}`} exchanges of one part were heard;` +
    ` ${unheard} of them nobody hears for sure.`;
  if (heard.length === 0) {
    const nothing =
      possible === 0 ? "The drawer and its prices hold no part that would go into this guard's lugs." : tally;
    return h("p", { class: "verdict" }, nothing);
  }
  const rows = heard.slice(0, SHOWN).map(({ name, from, to, cost, label, verdict, build }) => [
    `${words(name)}: ${putWords(to)}, in place of ${from.what}`,
    cost === 0 ? "lies in the drawer" : `${cost.toFixed(2)} ${currency}`.trimEnd(),
    `${settingWords(label, words)}: ${named(verdict, "the guard as it is", "the changed guard")}`,
    h(
      "button",
      {
        type: "button",
        class: "small",
        "aria-label": `Try it on the bench: ${putWords(to)} as ${words(name)}`,
        onclick: () => put(build as BuildSource),
      },
      "Try it on the bench",
    ),
  ]);
  return h(
    "div",
    { class: "stack" },
    plainTable("Changes that are heard, the cheapest first", ["Change", "Costs", "Most of it is heard", ""], rows),
    heard.length > SHOWN && h("p", { class: "hint" }, `${heard.length - SHOWN} more cost more, or differ less.`),
    h("p", { class: "hint" }, `${tally} ${basis}`),
    createCautions(false),
  );
}
