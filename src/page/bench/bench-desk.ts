import { latestOnly } from "../dom/later.ts";
import { BenchEngine } from "../engine/bench-engine.ts";
import type { AppStore } from "../state/app-state.ts";
import { bringMeter, meterInUse } from "./meter/kept-meter.ts";
import { probesFor } from "./probes.ts";

/** Long enough that a value being typed is not asked about letter by letter. */
const WAIT_MS = 250;

const UNREADABLE = "the guard as it is written cannot be read; mend what is listed under the drawing";

const engines = new WeakMap<AppStore, BenchEngine>();

/** The one bench behind all panels that ask it. */
export function benchEngineOf(store: AppStore): BenchEngine {
  const engine = engines.get(store) ?? new BenchEngine();
  engines.set(store, engine);
  return engine;
}

const kept = new WeakSet<AppStore>();

/**
 * Keeps `store.bench` up to date with the build on the bench from now on; a refusal is kept in `store.benchFault` until the next
 * answer. Whoever shows some of it asks for it, once or more often.
 */
export function keepBench(store: AppStore): void {
  if (kept.has(store)) return;
  kept.add(store);
  bringMeter(store);
  const engine = benchEngineOf(store);
  let timer: ReturnType<typeof setTimeout> | undefined;
  const latest = latestOnly();
  const ask = async (isLatest: () => boolean) => {
    const { reading, benchOptions } = store.state;
    if (!reading) return;
    try {
      const probes = probesFor(reading, benchOptions.probes);
      const bench = await engine.ask({ build: reading.build, ...benchOptions, probes, meter: meterInUse(store) });
      if (isLatest()) store.set({ bench, benchFault: "" });
    } catch (error) {
      if (isLatest()) store.set({ benchFault: (error as Error).message });
    }
  };
  store.watch(
    (state) => [state.reading, state.faults.length > 0, state.benchOptions],
    (reading, isUnreadable, ..._options) => {
      const isLatest = latest();
      clearTimeout(timer);
      if (isUnreadable) {
        store.set({ bench: undefined, benchOf: undefined, benchFault: UNREADABLE });
        return;
      }
      if (store.state.bench && store.state.benchOf !== reading) store.set({ bench: undefined });
      if (store.state.benchOf !== reading) store.set({ benchOf: reading, benchFault: "" });
      if (reading) timer = setTimeout(() => void ask(isLatest), WAIT_MS);
    },
  );
}
