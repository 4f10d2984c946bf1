import { h, replaceContent } from "../../dom/element.ts";
import { speechOf } from "../../words/lug-speech.ts";
import type { GuardDrawing } from "../guard-drawing.ts";
import type { Hand } from "./hand.ts";
import { handWords } from "./hand-words.ts";
import { lugCard } from "./lug-card.ts";
import type { LugFocus } from "./lug-keys.ts";
import { partCard } from "./part-card.ts";
import { wireCard } from "./wire-card.ts";

export interface HandCard {
  readonly element: HTMLElement;
  /** Shows what is chosen in a drawing. */
  show(drawing: GuardDrawing): void;
}

function cardOf(drawing: GuardDrawing, hand: Hand, focus: LugFocus): HTMLElement[] {
  const { chosen } = hand.state.state;
  if (chosen?.kind === "wire") return wireCard(chosen.wire, hand, speechOf(drawing.input.reading));
  if (chosen?.kind === "part") return partCard(chosen.name, drawing, hand);
  return chosen?.kind === "lug" ? lugCard(chosen.name, drawing, hand, focus) : [];
}

/** Beside the drawing: what the hand does, said as it changes, and what can be done with what is chosen. */
export function createHandCard(
  hand: Hand,
  focus: LugFocus,
  frame: HTMLElement,
  shown: () => GuardDrawing | undefined,
): HandCard {
  const said = h("p", { class: "hand-said", role: "status" });
  const card = h("div", { class: "hand-card" });
  const element = h("div", { class: "hand no-print" }, said, card);
  const show = (drawing: GuardDrawing) => {
    const { activeElement } = document;
    const hadFocus = card.contains(activeElement);
    const key = (activeElement as HTMLElement | null)?.dataset.key;
    replaceContent(card, cardOf(drawing, hand, focus));
    // Told by attributes: a style that looks for content would be asked again at every turn of a knob.
    const isOpen = card.childElementCount > 0;
    element.toggleAttribute("data-open", isOpen);
    document.documentElement.toggleAttribute("data-hand-open", isOpen);
    card.toggleAttribute("data-held", hand.state.state.held !== undefined);
    if (!hadFocus) return;
    // What had the focus has been replaced, or is gone: whoever works by keyboard goes on from the card or the drawing.
    const again = key && card.querySelector<HTMLElement>(`[data-key="${key}"]`);
    (again || card.querySelector<HTMLElement>("button, select, input") || frame).focus({ preventScroll: true });
  };
  hand.state.watch(
    (state) => [handWords(state)],
    (words) => {
      const drawing = shown();
      replaceContent(said, drawing ? speechOf(drawing.input.reading).say(words) : words);
    },
  );
  return { element, show };
}
