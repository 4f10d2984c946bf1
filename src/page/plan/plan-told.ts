import { type Child, h } from "../dom/element.ts";
import type { HandEdit } from "../engine/plan-reader.ts";
import type { LugSpeech } from "../words/lug-speech.ts";

function editList(edits: readonly HandEdit[], speech: LugSpeech | undefined): HTMLElement {
  return h(
    "ul",
    { class: "told" },
    edits.map(({ text }) => h("li", {}, speech ? speech.say(text) : text)),
  );
}

/** What was done by hand beyond the plan. */
export function byHandView(edits: readonly HandEdit[], speech: LugSpeech | undefined): HTMLElement {
  return h("div", { class: "by-hand" }, h("p", {}, "Done by hand on top of this plan:"), editList(edits, speech));
}

/** @param why the guard is no plan's */
export function noPlanView(why: string): Child[] {
  return [
    h("p", {}, h("b", {}, "This guard is wired by no plan. "), why),
    h("p", { class: "hint" }, "Change it in the drawing, or under Parts and Wires; all else works as ever."),
  ];
}

/** Asks before a change of plan drops what was done by hand. */
export function dropQuestion(
  dropped: readonly HandEdit[],
  speech: LugSpeech | undefined,
  change: () => void,
  keep: () => void,
): Child[] {
  return [
    h("p", {}, "This change leaves no room for what was done by hand:"),
    editList(dropped, speech),
    h(
      "div",
      { class: "buttons" },
      h("button", { type: "button", onclick: change }, "Change the plan and let it go"),
      h("button", { type: "button", onclick: keep }, "Leave the guard as it is"),
    ),
  ];
}
