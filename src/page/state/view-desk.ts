import type { Engine } from "../engine/engine.ts";
import type { AppStore } from "./app-state.ts";

/**
 * Keeps `store.view` up to date. One question at a time is under way: of the settings that a turning knob passes meanwhile,
 * the last is asked for next, so that no answer is waited for that nobody wants any more.
 */
export function keepView(store: AppStore, engine: Engine): void {
  let isAsking = false;
  let isDue = false;
  const ask = async () => {
    const { reading, settings, family, other, wantsPath } = store.state;
    if (!reading) return;
    isAsking = true;
    try {
      const answer = await engine.view(reading, { settings, family, other, wantsPath });
      store.set({ view: { reading, settings, ...answer } });
    } catch (error) {
      store.set({ notice: `No curve: ${(error as Error).message}` });
    } finally {
      isAsking = false;
      if (isDue) request();
    }
  };
  const request = () => {
    isDue = isAsking;
    if (!isAsking) void ask();
  };
  store.watchAny((state) => [state.reading, state.settings, state.family, state.other, state.wantsPath], request);
}
