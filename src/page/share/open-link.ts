import { getJson } from "../server/client.ts";
import type { Bench } from "../start/bench.ts";
import { openBuild, toReading } from "../start/open-build.ts";
import { applyView, type View } from "./view.ts";

/** Puts what a link carries on the bench. @returns whether there was something to put */
export async function openLink(bench: Bench, code: string): Promise<boolean> {
  const { store } = bench;
  try {
    const { build, view: written = {} } = await getJson(`/api/link/${code}`);
    const view = written as View;
    if (!(await openBuild(bench, build, view.settings ?? {}))) return false;
    applyView(store, view);
    if (view.other !== undefined) store.set({ other: await toReading(bench, view.other) });
    return true;
  } catch (error) {
    store.set({ notice: `This link cannot be opened: ${(error as Error).message}` });
    return false;
  }
}
