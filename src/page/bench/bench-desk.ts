import type { BenchEngine } from "../engine/bench-engine.ts";
import type { AppStore } from "../state/app-state.ts";
import { probesFor } from "./probes.ts";

/** Long enough that a value being typed is not asked about letter by letter. */
const WAIT_MS = 250;

/** Keeps `store.bench` up to date with the build on the bench; a refusal is kept in `store.benchFault` until the next answer. */
export function keepBench(store: AppStore, engine: BenchEngine): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let latest = 0;
  const ask = async (request: number) => {
    const { reading, benchOptions } = store.state;
    if (!reading) return;
    try {
      const probes = probesFor(reading, benchOptions.probes);
      const bench = await engine.ask({ build: reading.build, ...benchOptions, probes });
      if (request === latest) store.set({ bench, benchFault: "" });
    } catch (error) {
      if (request === latest) store.set({ benchFault: (error as Error).message });
    }
  };
  store.watch(
    (state) => [state.reading, state.benchOptions],
    (reading, ..._options) => {
      latest += 1;
      const request = latest;
      clearTimeout(timer);
      if (store.state.bench && store.state.benchOf !== reading) store.set({ bench: undefined });
      if (store.state.benchOf !== reading) store.set({ benchOf: reading, benchFault: "" });
      if (reading) timer = setTimeout(() => void ask(request), WAIT_MS);
    },
  );
}
