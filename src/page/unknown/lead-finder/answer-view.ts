import { h } from "../../dom/element.ts";
import { plainTable } from "../../dom/table.ts";
import type { LeadsTold } from "../../engine/leads-told.ts";
import { pickupPicture } from "./pickup-picture.ts";

const list = (texts: readonly string[]) =>
  h(
    "ul",
    { class: "told" },
    texts.map((text) => h("li", {}, text)),
  );

/** "93 %"; never 100 for what is not certain, nor 0 for what is possible. */
export function percent(share: number): string {
  if (share > 0.995) return "over 99 %";
  return share < 0.01 ? "under 1 %" : `${Math.round(100 * share)} %`;
}

const section = (title: string, texts: readonly string[]) =>
  texts.length > 0 && h("div", {}, h("h4", {}, title), list(texts));

function leadTable({ leads }: LeadsTold): HTMLElement {
  return plainTable(
    "What each lead is",
    ["Lead", "Most likely", "How sure", "Or else"],
    leads.map(({ lead, may: [best, other] }) => [
      lead,
      best?.is,
      best && percent(best.probability),
      other && other.probability >= 0.01 ? `${other.is} (${percent(other.probability)})` : "–",
    ]),
  );
}

/** Under this a wiring is a guess that nobody should solder by. */
const WORTH_WIRING = 0.5;

function wiringView({ wiring }: LeadsTold): HTMLElement {
  const { text, alternatives, metal, agreed, main } = wiring;
  if (agreed < WORTH_WIRING)
    return h("p", { class: "hint" }, "How to wire it shows once more is known: the likeliest ways still differ.");
  return h(
    "div",
    { class: "stack" },
    h("h4", {}, `How to wire it (${percent(agreed)} of what is possible agrees)`),
    h("p", {}, main ? h("b", {}, text) : text),
    metal && h("p", {}, metal),
    alternatives.length > 0 &&
      h("details", {}, h("summary", {}, "Other ways to wire it"), list(alternatives.map((each) => each.text))),
  );
}

function others({ labellings, notListed }: LeadsTold): HTMLElement {
  const rest =
    notListed.count > 0 ? [`${notListed.count} more, not listed: together ${percent(notListed.probability)}.`] : [];
  return h(
    "details",
    {},
    h("summary", {}, "Every labelling that is still possible"),
    h(
      "ol",
      {},
      labellings.map(({ probability, coils, text }) =>
        h(
          "li",
          {},
          `${percent(probability)}: ${text} ${coils.map(({ row, magnet }) => `Top of the ${row}: ${magnet}.`).join(" ")}`,
        ),
      ),
    ),
    list(rest),
  );
}

/** All that is known of the pickup. */
export function answerView(told: LeadsTold): HTMLElement {
  return h(
    "div",
    { class: "stack" },
    h(
      "div",
      { class: "lead-answer" },
      pickupPicture(told),
      h(
        "div",
        { class: "stack" },
        section("Certain", told.certain),
        section(
          "Doubtful",
          told.doubts.map(({ text }) => text),
        ),
      ),
    ),
    leadTable(told),
    section("What cannot be told", told.cannotTell),
    wiringView(told),
    others(told),
    h("details", {}, h("summary", {}, "Which end is the start?"), h("p", {}, told.convention)),
  );
}
