import type { BeepTold } from "../../../bench/switch-finder/question.ts";
import type { SwitchAnswer } from "../../../contract/bench/switch-finder.ts";
import { capitalised, listed } from "../../../english.ts";
import { h } from "../../dom/element.ts";
import { plainTable } from "../../dom/table.ts";
import { positionsTable } from "./told-view.ts";

type Table = SwitchAnswer["tables"][number];

const SHORTING: Readonly<Record<Table["shorting"], string>> = {
  yes: "It makes the next contact before it breaks the last (shorting).",
  no: "It breaks a contact before it makes the next (non-shorting).",
  "not tried": "",
};

function lugsTable({ known }: Table): HTMLElement | false {
  if (!known) return false;
  return plainTable("Its lugs", ["Yours", "In the build file"], Object.entries(known.lugs));
}

function othersText({ others, known }: Table): string {
  const titles = [...new Set(others.map(({ title }) => title))].filter((title) => title !== known?.title);
  return [
    known?.reversed && "Your position 1 is its last.",
    others.some(({ title }) => title === known?.title) &&
      "Another pattern of the same switch has the same contacts: it is this one, turned round.",
    titles.length > 0 && `No beeper tells it from a ${listed(titles)}.`,
  ]
    .filter(Boolean)
    .join(" ");
}

function shortingView(
  { shortingTest }: SwitchAnswer,
  { shorting }: Table,
  tell: (told: BeepTold) => void,
): HTMLElement {
  if (shorting !== "not tried" || !shortingTest) return h("p", {}, SHORTING[shorting]);
  const { between, betweenPositions, text } = shortingTest;
  const answer = (label: string, beeps: boolean) =>
    h("button", { type: "button", onclick: () => tell({ between, betweenPositions, beeps }) }, label);
  return h(
    "div",
    { class: "stack" },
    h("h4", {}, "Shorting or not, if you like"),
    h("p", {}, text),
    h("div", { class: "buttons" }, answer("It beeped on the way", true), answer("It stayed silent", false)),
  );
}

/** What the switch is, once that is known. */
export function foundView(answer: SwitchAnswer, tell: (told: BeepTold) => void): HTMLElement {
  const table = answer.tables[0]!;
  return h(
    "div",
    { class: "stack" },
    h("h4", {}, capitalised(table.known?.title ?? "a switch of its own")),
    h("p", {}, answer.text),
    h("p", {}, table.text),
    h("p", { class: "hint" }, othersText(table)),
    h("div", { class: "found-tables" }, positionsTable("Its contacts", table.positions), lugsTable(table)),
    shortingView(answer, table, tell),
  );
}
