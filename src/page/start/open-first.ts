import { firstGuard } from "../server/page-data.ts";
import type { BuildSource } from "../state/reading.ts";
import type { Bench } from "./bench.ts";

/** Opens the first example, for somebody who has nothing on the bench. */
export async function openFirst({ store, editor, engine }: Bench): Promise<void> {
  const { scenario, build, compareWith, signal } = firstGuard();
  const { id, description, question, settings, sweep } = scenario;
  const source = scenario.build as BuildSource;
  const other = compareWith ? engine.know(scenario.compareWith as BuildSource, compareWith) : undefined;
  store.set({
    startedFrom: id,
    story: { description, question, ...(sweep ? { sweep } : {}) },
    other,
    signal: store.state.signal || signal,
  });
  await editor.open(source, settings, engine.know(source, build));
}
