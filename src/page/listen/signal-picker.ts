import { freshId, h, replaceContent } from "../dom/element.ts";
import { pageOffer } from "../server/page-data.ts";
import type { AppStore } from "../state/app-state.ts";

async function fillSignals(store: AppStore, select: HTMLSelectElement): Promise<void> {
  const { signals } = await pageOffer();
  replaceContent(
    select,
    signals.map(({ name, title, description }) => h("option", { value: name, title: description }, title)),
  );
  showSignal(store, select);
}

/** What a link or an older page names may be none of those offered; then the first is played. */
function showSignal(store: AppStore, select: HTMLSelectElement): void {
  select.value = store.state.signal;
  const [first] = select.options;
  if (first && select.selectedIndex < 0) store.set({ signal: first.value });
}

/** What is played through the guard: one of the phrases or test signals; `fill` offers them once the first screen stands. */
export function createSignalPicker(store: AppStore): { readonly element: HTMLElement; fill(): Promise<void> } {
  const id = freshId("signal");
  const select = h("select", { id, onchange: () => store.set({ signal: select.value, ownSound: undefined }) });
  store.watch(
    (state) => [state.signal, state.ownSound],
    (_signal, ownSound) => {
      showSignal(store, select);
      select.disabled = ownSound !== undefined;
    },
  );
  return {
    element: h("div", { class: "field" }, h("label", { for: id }, "Phrase"), select),
    fill: () => fillSignals(store, select),
  };
}
