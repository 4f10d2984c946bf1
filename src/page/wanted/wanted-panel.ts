import type { WantedAnswer, WantedGuard } from "../../contract/wanted.ts";
import type { WishesAnswer } from "../../contract/wishes.ts";
import { h, replaceContent } from "../dom/element.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import { clearFormFaults, formText, showFormFaults } from "../fields/form-fields.ts";
import { createLongRun } from "../fields/form-run.ts";
import { postJson } from "../server/client.ts";
import type { Bench } from "../start/bench.ts";
import { openBuild } from "../start/open-build.ts";
import { guardsView } from "./guard-view.ts";
import { createSearchOptions } from "./search-options.ts";
import { WishForm } from "./wish-form.ts";
import { type Vocabulary, written } from "./wish-list.ts";

const INTRO =
  "Say what the guard is to sound like, in words of the trade. Every word is shown as something that can be measured, and can be changed; then guards are looked for, from their layout to their values.";
const EXAMPLE = "glassy 4, fat bridge that cleans up, hum-free 2";

function understoodView({ unknown, notes, contradictions }: WishesAnswer): HTMLElement {
  const told = [
    ...unknown
      .filter(({ said }) => !said.includes(" "))
      .map(({ said, nearest }) => `“${said}” is not known here${nearest ? `; did you mean “${nearest}”?` : "."}`),
    ...notes,
    ...contradictions.map(({ text }) => text),
  ];
  return h(
    "ul",
    { class: "told" },
    told.map((text) => h("li", {}, text)),
  );
}

const OLD = "The guards below were found for other wishes than those above; find guards again for these.";
const hint = "No word was understood. Add a place and choose its words below.";

/** Wishes for a sound, and the guards that come nearest to them. */
export function createWantedPanel(bench: Bench): HTMLElement {
  bringStyle("wanted.css");
  const { store } = bench;
  const text = formText("text", "What you want to hear", "", EXAMPLE);
  const form = new WishForm(() => tellWhetherOld());
  const told = h("div", { role: "status" });
  const options = createSearchOptions(bench);
  const old = h("p", { class: "caution", hidden: true }, OLD);
  let vocabulary: Vocabulary | undefined;
  let asked: string | undefined;
  const tellWhetherOld = () => {
    old.hidden = asked === undefined || asked === JSON.stringify(form.read());
  };

  const understand = async () => {
    clearFormFaults([text]);
    try {
      const answer = await postJson("/api/wishes", { text: text.read() });
      vocabulary = answer;
      form.show(written(answer.wishes), vocabulary);
      tellWhetherOld();
      const isEmpty = answer.wishes.length === 0 && text.read() !== "";
      replaceContent(told, understoodView(answer), isEmpty && h("p", {}, hint));
    } catch (error) {
      replaceContent(told, h("p", { class: "fault-text" }, showFormFaults([text], error)));
    }
  };

  const open = async (guard: WantedGuard) => {
    if (await openBuild(bench, guard.build))
      store.set({ notice: "The guard is on the bench, as a plan. Undo brings back the one before." });
    scrollTo({ top: 0 });
  };

  const run = createLongRun("Find guards", async (stop) => {
    const wishes = form.read();
    if (wishes.length === 0) throw new Error("Say what you want to hear first, or add a place and choose a word.");
    asked = undefined;
    tellWhetherOld();
    const { request, drawer } = await options.read();
    const answer: WantedAnswer = await postJson("/api/wanted", { ...request, wishes }, stop);
    const lacks = await drawer?.lacks(answer.guards);
    asked = JSON.stringify(wishes);
    tellWhetherOld();
    return guardsView(answer, vocabulary!, (guard) => void open(guard), lacks);
  });
  const read = h("button", { type: "button", onclick: () => void understand() }, "Read it");
  text.element.addEventListener("keydown", (event) => {
    if (event.key === "Enter") void understand();
  });
  void understand();
  return h(
    "div",
    { class: "stack wanted-panel" },
    h("h3", {}, "Sound wanted"),
    h("p", {}, INTRO),
    h("div", { class: "wanted-text" }, text.element, read),
    told,
    h("h4", {}, "As it was understood"),
    form.element,
    options.element,
    h(
      "p",
      { class: "hint" },
      "Cable and amplifier are those of the guard on the bench. The search takes some seconds; it can be stopped.",
    ),
    h("div", { class: "buttons" }, run.button),
    old,
    run.answer,
  );
}
