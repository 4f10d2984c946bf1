import { settingsAlong } from "../curves/axes.ts";
import { later } from "../dom/later.ts";
import { savesData } from "../dom/thrift.ts";
import type { Engine } from "../engine/engine.ts";
import type { AppStore } from "./app-state.ts";

/** Long enough that nobody is turning anything. */
const RESTED_MS = 500;

/** Has the other positions of the main switch worked out, one after the other, for as long as nothing is turned. */
async function lookAhead(store: AppStore, engine: Engine): Promise<void> {
  const { view, family, other, wantsPath } = store.state;
  if (!view) return;
  const { reading, settings } = view;
  for (const ahead of settingsAlong(reading, settings, "position")) {
    if (store.state.view !== view) return;
    await engine.view(reading, { settings: ahead, family, other, wantsPath, shownShape: undefined });
  }
}

/**
 * Keeps `store.view` up to date. One question at a time is under way: of the settings that a turning knob passes meanwhile,
 * the last is asked for next, so that no answer is waited for that nobody wants any more.
 */
export function keepView(store: AppStore, engine: Engine): void {
  const rested = later(RESTED_MS, () => lookAhead(store, engine));
  let isAsking = false;
  let isDue = false;
  const ask = async () => {
    const { reading, settings, family, other, wantsPath } = store.state;
    if (!reading) return;
    isAsking = true;
    try {
      const { view } = store.state;
      const shown = view?.reading === reading && wantsPath ? view.path : undefined;
      const answer = await engine.view(reading, { settings, family, other, wantsPath, shownShape: shown?.shape });
      store.set({ view: { reading, settings, ...answer, path: answer.path ?? shown } });
      if (!savesData()) rested();
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
