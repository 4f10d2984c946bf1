import { h } from "../dom/element.ts";
import type { Deck } from "../listen/deck.ts";
import type { Side, Trials } from "./trials.ts";

export interface TestSounds {
  readonly A: AudioBuffer;
  readonly B: AudioBuffer;
}

/** Plays A, B and X, and takes answers. Nothing on it depends on which of the two X is. */
export function createRunningTest(trials: Trials, sounds: TestSounds, deck: Deck, onOver: () => void): HTMLElement {
  const progress = h("p", { class: "progress", role: "status" });
  const play = (which: "A" | "B" | "X") => () => {
    deck.play(which === "X" ? sounds[trials.hidden] : sounds[which]);
    for (const [name, button] of Object.entries(players)) button.setAttribute("aria-pressed", String(name === which));
  };
  const players = {
    A: h("button", { type: "button", class: "big", onclick: play("A") }, "Play A"),
    B: h("button", { type: "button", class: "big", onclick: play("B") }, "Play B"),
    X: h("button", { type: "button", class: "big", onclick: play("X") }, "Play X"),
  };
  const tell = () => {
    progress.textContent = `Trial ${trials.answered + 1} of ${trials.count}: is X the same as A or as B?`;
  };
  const answer = (side: Side) => () => {
    trials.answer(side);
    deck.stop();
    for (const button of Object.values(players)) button.setAttribute("aria-pressed", "false");
    if (trials.isOver) onOver();
    else tell();
  };
  tell();
  return h(
    "div",
    { class: "stack" },
    progress,
    h("div", { class: "buttons" }, players.A, players.B, players.X),
    h(
      "div",
      { class: "buttons" },
      h("button", { type: "button", class: "primary big", onclick: answer("A") }, "X is A"),
      h("button", { type: "button", class: "primary big", onclick: answer("B") }, "X is B"),
    ),
  );
}
