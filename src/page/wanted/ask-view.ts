import { h } from "../dom/element.ts";
import { targetFields, targetText } from "./target-fields.ts";
import type { Vocabulary, WrittenWish } from "./wish-list.ts";

export type WrittenAsk = WrittenWish["asks"][number];

interface AskMoves {
  /** The place that it is asked of, in words. */
  readonly where: string;
  readonly isOpen: boolean;
  opened(isOpen: boolean): void;
  /** Called at every change that a person makes to a target. */
  changed(): void;
  remove(): void;
}

/** One word wished for somewhere, with its targets to be changed and where they come from. */
export function askView(ask: WrittenAsk, vocabulary: Vocabulary, moves: AskMoves): HTMLElement {
  const { meaning, source } = vocabulary.words.find(({ word }) => word === ask.word)!;
  const label = `Leave out ${ask.word} in ${moves.where}`;
  const remove = h(
    "button",
    { type: "button", class: "small", "aria-label": label, onclick: moves.remove },
    "Leave out",
  );
  const summary = h("span", { class: "hint" });
  const tell = () => {
    summary.textContent = ask.targets.map((target) => targetText(target, vocabulary)).join("; ");
  };
  tell();
  const details = h(
    "details",
    { open: moves.isOpen },
    h("summary", {}, h("b", {}, ask.word), ": ", summary),
    h("p", {}, `${meaning.charAt(0).toUpperCase()}${meaning.slice(1)}.`),
    targetFields(ask.targets, vocabulary, () => {
      tell();
      moves.changed();
    }),
    h("p", { class: "hint" }, `Where this comes from: ${source}.`),
  );
  details.addEventListener("toggle", () => moves.opened(details.open));
  return h("li", { class: "ask" }, details, remove);
}
