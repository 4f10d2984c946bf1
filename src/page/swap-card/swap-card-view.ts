import type { SwapCardAnswer } from "../../contract/bench/swap-card.ts";
import { type Child, h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";

function listOf(title: string, texts: readonly Child[]): HTMLElement | false {
  return (
    texts.length > 0 &&
    h(
      "section",
      { class: "paper-block" },
      h("h4", {}, title),
      h(
        "ul",
        { class: "told" },
        texts.map((text) => h("li", {}, text)),
      ),
    )
  );
}

function stepsOf(title: string, steps: SwapCardAnswer["stepsOut"]): HTMLElement {
  return h(
    "section",
    { class: "paper-block" },
    h("h4", {}, title),
    h(
      "ol",
      { class: "swap-steps" },
      steps.map(({ title: what, text }) => h("li", {}, h("b", {}, `${what}. `), text)),
    ),
  );
}

type Reading = SwapCardAnswer["readings"][number];

function readingRow({ where, should, shows, noted }: Reading): Child[] {
  return [where, [should, shows].filter(Boolean).join("; "), noted ?? "______", "______"];
}

/** The sentence of a position without its beginning, which stands in the table's first column. */
function playerRow({ position, label, text }: SwapCardAnswer["player"][number]): Child[] {
  const rest = text.slice(text.indexOf(`(${label})`) + label.length + 2).replace(/^[:\s]+/, "");
  return [position || "the only one", label, rest.charAt(0).toUpperCase() + rest.slice(1)];
}

function humWords({ before, after }: SwapCardAnswer["humFree"]): string {
  const told = (positions: readonly string[]) => (positions.length === 0 ? "none" : positions.join("; "));
  return `Free of hum before: ${told(before)}. Now: ${told(after)}.`;
}

function volumeWords({ positions, text }: SwapCardAnswer["volume"][number], isOnly: boolean): string {
  return isOnly ? text : `Position${positions.length === 1 ? "" : "s"} ${positions.join(", ")}: ${text}`;
}

/** The card: cautions first, what to do, what to readjust and measure, what to tell the player. */
export function swapCardView(card: SwapCardAnswer): HTMLElement {
  const { cautions, stepsOut, stepsIn, stays, heights, readings, player, fresh, volume, tone, switches, notes } = card;
  const facts = [card.guitar && `Guitar: ${card.guitar}`, card.date && `Date: ${card.date}`].filter(Boolean);
  return h(
    "article",
    { class: "paper swap-card", "aria-label": "The swap card" },
    h(
      "header",
      {},
      h(
        "div",
        {},
        h("h3", {}, `Out: ${card.out}. In: ${card.in}.`),
        facts.map((text) => h("p", {}, text)),
      ),
    ),
    h(
      "section",
      { class: "paper-block swap-cautions" },
      h("h4", {}, "Before anything is opened"),
      h(
        "ul",
        { class: "told" },
        cautions.map((text) => h("li", {}, text)),
      ),
    ),
    stepsOf("The old guard out", stepsOut),
    stepsOf("The new guard in", stepsIn),
    listOf("What stays as it is", stays),
    plainTable(
      "The meter on the new guard, tip to sleeve, every dial at 10, before it is closed",
      ["Position", "Should read", "Noted before", "Now"],
      readings.map(readingRow),
    ),
    listOf("Pickup heights", heights),
    h("h4", { class: "swap-player" }, "For the player"),
    plainTable("Where each sound is now", ["Before", "Sounded", "Now"], player.map(playerRow)),
    listOf(
      "New sounds",
      fresh.map(({ position, label }) => (position === "" ? label : `Position ${position}: ${label}`)),
    ),
    h("p", {}, humWords(card.humFree)),
    listOf(
      "Volume",
      volume.map((each) => volumeWords(each, volume.length === 1)),
    ),
    listOf("Tone", tone),
    listOf("Push-pulls and small switches", switches),
    h("p", { class: "hint" }, notes.join(" ")),
  );
}
