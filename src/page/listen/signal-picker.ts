import { freshId, h, replaceContent } from "../dom/element.ts";
import { getJson } from "../server/client.ts";
import type { AppStore } from "../state/app-state.ts";

async function fillSignals(store: AppStore, select: HTMLSelectElement): Promise<void> {
  const { default: usual, signals } = await getJson("/api/signals");
  replaceContent(
    select,
    signals.map(({ name, title, description }) => h("option", { value: name, title: description }, title)),
  );
  if (!store.state.signal) store.set({ signal: usual });
}

/** What is played through the guard: one of the service's phrases or test signals. */
export function createSignalPicker(store: AppStore): HTMLElement {
  const id = freshId("signal");
  const select = h("select", { id, onchange: () => store.set({ signal: select.value, ownSound: undefined }) });
  fillSignals(store, select).catch((error: Error) => store.set({ notice: error.message }));
  store.watch(
    (state) => [state.signal, state.ownSound],
    (signal, ownSound) => {
      select.value = signal;
      select.disabled = ownSound !== undefined;
    },
  );
  return h("div", { class: "field" }, h("label", { for: id }, "Phrase"), select);
}
