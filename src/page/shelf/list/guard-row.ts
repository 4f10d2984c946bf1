import type { GuardLine } from "../../../shelf/guard.ts";
import { h } from "../../dom/element.ts";

export interface RowActions {
  /** Shows all that is kept of a guard. */
  show(line: GuardLine): void;
  /** Puts it on the bench. */
  open(line: GuardLine): void;
  select(line: GuardLine, isSelected: boolean): void;
}

function readingsText({ readings }: GuardLine): string | false {
  return readings.length > 0 && `${readings.length} ${readings.length === 1 ? "set" : "sets"} of readings`;
}

/** A day stays on one line. */
const NO_BREAK_HYPHEN = "\u2011";

/** One guard of the list. */
export function guardRow(line: GuardLine, thumb: HTMLElement, isSelected: boolean, actions: RowActions): HTMLLIElement {
  const { id, name, guitar, state, made } = line;
  const box = h("input", { type: "checkbox", checked: isSelected, "aria-label": `Select ${name}` });
  box.addEventListener("change", () => actions.select(line, box.checked));
  const told = [guitar, `made ${made.replaceAll("-", NO_BREAK_HYPHEN)}`, readingsText(line)]
    .filter(Boolean)
    .join(" · ");
  return h(
    "li",
    { class: "shelf-row", "data-guard": id },
    h("label", { class: "shelf-tick" }, box),
    thumb,
    h(
      "div",
      { class: "shelf-told" },
      h(
        "button",
        { type: "button", class: "quiet shelf-name", dir: "auto", onclick: () => actions.show(line) },
        name || "no name",
      ),
      h("p", {}, h("span", { class: "shelf-state", "data-state": state }, state), ` ${told}`),
    ),
    h(
      "button",
      { type: "button", "aria-label": `Open ${name} on the bench`, onclick: () => actions.open(line) },
      "Open",
    ),
  );
}
