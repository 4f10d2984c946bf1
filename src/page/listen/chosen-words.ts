import { h } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";

/**
 * What the chosen ones of some options are, in sight where nothing can hover over them for their titles. Kept up to date by the store:
 * whoever chooses, the option that is shown says it.
 */
export function createChosenWords(store: AppStore, choices: readonly HTMLElement[]) {
  const element = h("p", { class: "hint chosen-words" });
  const selects = choices.flatMap((each) => [...each.querySelectorAll("select")]);
  const show = () => {
    const said = selects
      .filter(({ disabled }) => !disabled)
      .map(({ selectedOptions: [option] }) => option?.title ?? "");
    element.textContent = said.filter(Boolean).join("; ");
  };
  store.watchAny((state) => [state.signal, state.hand, state.stringAge, state.ownSound, state.heardThrough], show);
  return { element, show };
}
