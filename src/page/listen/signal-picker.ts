import { freshId, h, replaceContent } from "../dom/element.ts";
import { pageOffer } from "../server/page-data.ts";
import type { AppStore } from "../state/app-state.ts";

async function fillSignals(store: AppStore, select: HTMLSelectElement): Promise<void> {
  const { signals } = await pageOffer();
  replaceContent(
    select,
    signals.map(({ name, title, description }) => h("option", { value: name, title: description }, title)),
  );
  if (!store.state.signal) store.set({ signal: signals[0]!.name });
  select.value = store.state.signal;
}

/** What is played through the guard: one of the phrases or test signals; `fill` offers them once the first screen stands. */
export function createSignalPicker(store: AppStore): { readonly element: HTMLElement; fill(): Promise<void> } {
  const id = freshId("signal");
  const select = h("select", { id, onchange: () => store.set({ signal: select.value, ownSound: undefined }) });
  store.watch(
    (state) => [state.signal, state.ownSound],
    (signal, ownSound) => {
      select.value = signal;
      select.disabled = ownSound !== undefined;
    },
  );
  return {
    element: h("div", { class: "field" }, h("label", { for: id }, "Phrase"), select),
    fill: () => fillSignals(store, select),
  };
}
