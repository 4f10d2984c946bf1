import type { WantedAnswer, WantedGuard } from "../../contract/wanted.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import { targetText } from "./target-fields.ts";
import { placeWords, type Vocabulary } from "./wish-list.ts";

export type Open = (guard: WantedGuard) => void;

type Reached = WantedGuard["wishes"][number]["asks"][number]["targets"][number];

function reachedText({ figure, value, short }: Reached, { figures }: Vocabulary): string {
  const { unit } = figures.find((each) => each.figure === figure)!;
  const shown = value === null ? "none" : `${String(Number(value.toPrecision(3))).replace("-", "−")} ${unit}`;
  return short === 0 ? `${shown}: reached` : `${shown}: missed by ${short.toFixed(1)} steps`;
}

/** What a guard makes of the wishes, target by target. */
function wishesTable({ wishes }: WantedGuard, vocabulary: Vocabulary): HTMLElement {
  const rows = wishes.flatMap(({ where, label, settings, asks }) =>
    asks.flatMap(({ word, targets }) =>
      targets.map((target) => [
        `${word}, ${placeWords(where).toLowerCase()}`,
        settings === null ? "no such place" : (label ?? ""),
        targetText(target, vocabulary),
        reachedText(target, vocabulary),
      ]),
    ),
  );
  return plainTable("Wishes beside what is reached", ["Wish", "Sounds", "Wanted", "Reached"], rows);
}

function openButton(guard: WantedGuard, open: Open): HTMLElement {
  const name = [guard.from, ...guard.changes].join("; ");
  return h(
    "button",
    { type: "button", "aria-label": `Put it on the bench: ${name}`, onclick: () => open(guard) },
    "Put it on the bench",
  );
}

/** @param lacks of what it takes, what the drawer has not; undefined where nobody asked */
function guardView(
  guard: WantedGuard,
  vocabulary: Vocabulary,
  open: Open,
  isFirst: boolean,
  lacks: string | undefined,
): HTMLElement {
  const { from, changes, values, met, wishes } = guard;
  return h(
    "li",
    { class: "found-guard" },
    h("h5", {}, from),
    changes.length > 0 && h("p", {}, changes.join("; ")),
    h("p", {}, values.join("; ")),
    h("p", {}, h("b", {}, `${met} of ${wishes.length} places as wished`)),
    lacks !== undefined &&
      h("p", {}, lacks === "" ? "Every part of it is in the drawer." : `Not in the drawer: ${lacks}.`),
    h("div", { class: "buttons" }, openButton(guard, open)),
    h("details", { open: isFirst }, h("summary", {}, "Wish by wish"), wishesTable(guard, vocabulary)),
  );
}

/**
 * The guards that come nearest, what stands in their way, and how they were looked for.
 * @param lacks of each what the drawer has not, where that was asked
 */
export function guardsView(
  answer: WantedAnswer,
  vocabulary: Vocabulary,
  open: Open,
  lacks?: readonly string[],
): HTMLElement {
  const { guards, tradeOffs, understood, method, costMeaning } = answer;
  return h(
    "section",
    { class: "stack", "aria-label": "Guards found" },
    h("h4", {}, "What comes nearest"),
    understood.contradictions.map(({ text }) => h("p", { class: "verdict" }, text)),
    h(
      "ol",
      { class: "found-guards" },
      guards.map((guard, index) => guardView(guard, vocabulary, open, index === 0, lacks?.[index])),
    ),
    tradeOffs.length > 0 && [
      h("h4", {}, "What the missed wishes would cost"),
      h(
        "ul",
        { class: "trade-offs" },
        tradeOffs.map(({ text, guard }) =>
          h("li", {}, h("p", {}, text), h("div", { class: "buttons" }, openButton(guard, open))),
        ),
      ),
    ],
    h("p", { class: "hint" }, `${method} Ranked by the ${costMeaning}.`),
  );
}
