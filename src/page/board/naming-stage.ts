import { h } from "../dom/element.ts";
import type { Deck } from "../listen/deck.ts";
import { BOARD_KEYS } from "./board.ts";
import type { NamingTrials } from "./naming-trials.ts";

export interface NamingTest {
  readonly trials: NamingTrials;
  /** Of the cells, and their sounds, in the order of the trials' numbers. */
  readonly names: readonly string[];
  readonly sounds: readonly AudioBuffer[];
  readonly deck: Deck;
  /** How many there are to be, where that was chosen before. */
  readonly trialCount: number | undefined;
}

/** Plays the hidden one and each by name, and takes answers. Nothing on it depends on which is hidden. */
export function createNamingStage(
  { trials, names, sounds, deck, trialCount }: NamingTest,
  onOver: () => void,
): HTMLElement {
  const progress = h("p", { class: "progress", role: "status" });
  const tell = () => {
    const of = trialCount === undefined ? "" : ` of ${trialCount}`;
    progress.textContent = `Trial ${trials.answered + 1}${of}: which one is X?`;
  };
  const press = (pressed: HTMLElement | undefined) => {
    for (const button of [x, ...known]) button.setAttribute("aria-pressed", String(button === pressed));
  };
  const x = h("button", { type: "button", class: "big", "aria-pressed": "false" }, "Play X");
  x.addEventListener("click", () => {
    deck.play(sounds[trials.hidden]!);
    press(x);
  });
  const known = names.map((name, index) => {
    const button = h("button", { type: "button", "aria-pressed": "false" }, `Play ${BOARD_KEYS[index]}: ${name}`);
    button.addEventListener("click", () => {
      deck.play(sounds[index]!);
      press(button);
    });
    return button;
  });
  const answer = (index: number) => {
    trials.answer(index);
    deck.stop();
    press(undefined);
    if (trials.outcome !== undefined) return onOver();
    tell();
    x.focus();
  };
  const answers = names.map((name, index) =>
    h(
      "button",
      {
        type: "button",
        class: "primary",
        "aria-label": `X is ${BOARD_KEYS[index]}: ${name}`,
        onclick: () => answer(index),
      },
      `X is ${BOARD_KEYS[index]}`,
    ),
  );
  tell();
  return h(
    "div",
    { class: "stack" },
    progress,
    h("div", { class: "buttons" }, x),
    h("div", { class: "buttons naming-answers", role: "group", "aria-label": "Name it" }, answers),
    h("div", { class: "stack naming-known", role: "group", "aria-label": "Hear them by name" }, known),
  );
}
