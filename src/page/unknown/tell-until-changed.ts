import type { AppStore } from "../state/app-state.ts";

/** Says what was done to the guard on the bench until it is another one: after undoing it would no longer be true. */
export function tellUntilChanged(store: AppStore, status: HTMLElement, text: string): void {
  const { source } = store.state;
  status.textContent = text;
  const stop = store.watchAny(
    (state) => [state.source],
    () => {
      if (store.state.source === source) return;
      stop();
      if (status.textContent === text) status.textContent = "";
    },
  );
}
