import { createSwitch } from "../controls/on-off.ts";
import { postJson } from "../server/client.ts";
import type { AppStore } from "../state/app-state.ts";

/** Long enough that a knob being turned asks once, when it has come to rest. */
const WAIT_MS = 250;

/** Keeps the band of the current setting in `store.band` while it is wanted. */
export function createToleranceSwitch(store: AppStore): HTMLElement {
  let latest = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const ask = async (request: number) => {
    const { reading, settings } = store.state;
    if (!reading) return;
    try {
      const band = await postJson("/api/tolerance", { build: reading.source, settings });
      if (request === latest) store.set({ band });
    } catch (error) {
      if (request === latest) store.set({ notice: (error as Error).message });
    }
  };
  const toggle = createSwitch("What part tolerances leave open (5 to 95 % of guards)", (wantsBand) =>
    store.set({ wantsBand }),
  );
  store.watch(
    (state) => [state.wantsBand, state.reading, state.settings],
    (wanted, ..._inputs) => {
      toggle.show(wanted);
      latest += 1;
      const request = latest;
      clearTimeout(timer);
      if (store.state.band) store.set({ band: undefined });
      if (wanted) timer = setTimeout(() => void ask(request), WAIT_MS);
    },
  );
  return toggle.element;
}
