import { freshId, h, replaceContent } from "../dom/element.ts";
import { pageOffer } from "../server/page-data.ts";
import type { AppState, AppStore } from "../state/app-state.ts";
import { isPhrase } from "./asked-signal.ts";

type Choice = "hand" | "stringAge";

/** How a phrase is played: one choice among a few, off while no phrase is chosen. */
function createChoice(store: AppStore, label: string, choice: Choice) {
  const id = freshId(choice);
  const take = () => store.set({ [choice]: select.value } as Pick<AppState, Choice>);
  const select = h("select", { id, onchange: take });
  store.watch(
    (state) => [state[choice], state.signal, state.ownSound],
    (value, signal, ownSound) => {
      select.value = value;
      select.disabled = !isPhrase({ signal, ownSound });
    },
  );
  return { select, element: h("div", { class: "field" }, h("label", { for: id }, label), select) };
}

/** The hand that plucks and the age of the strings; `fill` offers them with the phrases. */
export function createPlayingPicker(store: AppStore): {
  readonly elements: readonly HTMLElement[];
  fill(): Promise<void>;
} {
  const hand = createChoice(store, "Hand", "hand");
  const strings = createChoice(store, "Strings", "stringAge");
  return {
    elements: [hand.element, strings.element],
    fill: async () => {
      const offer = await pageOffer();
      for (const [{ select }, ways, value] of [
        [hand, offer.hands, store.state.hand],
        [strings, offer.strings, store.state.stringAge],
      ] as const) {
        replaceContent(
          select,
          ways.map(({ name, title, description }) => h("option", { value: name, title: description }, title)),
        );
        select.value = value;
      }
    },
  };
}
