import { createSwitch } from "../controls/on-off.ts";
import { h } from "../dom/element.ts";
import { latestOnly } from "../dom/later.ts";
import { postJson } from "../server/client.ts";
import type { AppStore } from "../state/app-state.ts";
import { createTemperatureSpan } from "./temperature-span.ts";

/** Long enough that a knob being turned asks once, when it has come to rest. */
const WAIT_MS = 250;

/** Keeps the band of the current setting in `store.band` while it is wanted. */
export function createToleranceSwitch(store: AppStore): HTMLElement {
  const latest = latestOnly();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const ask = async (isLatest: () => boolean) => {
    const { reading, settings, bandCelsius } = store.state;
    if (!reading) return;
    const temperature = bandCelsius && ([Math.min(...bandCelsius), Math.max(...bandCelsius)] as const);
    try {
      const body = { build: reading.source, settings, ...(temperature ? { temperature } : {}) };
      const band = await postJson("/api/tolerance", body);
      if (isLatest()) store.set({ band });
    } catch (error) {
      if (isLatest()) store.set({ notice: (error as Error).message });
    }
  };
  const toggle = createSwitch("What part tolerances leave open (5 to 95 % of guards)", (wantsBand) =>
    store.set({ wantsBand }),
  );
  store.watch(
    (state) => [state.wantsBand, state.reading, state.settings, state.bandCelsius],
    (wanted, ..._inputs) => {
      toggle.show(wanted);
      const isLatest = latest();
      clearTimeout(timer);
      if (store.state.band) store.set({ band: undefined });
      if (wanted) timer = setTimeout(() => void ask(isLatest), WAIT_MS);
    },
  );
  return h("div", { class: "stack" }, toggle.element, createTemperatureSpan(store));
}
