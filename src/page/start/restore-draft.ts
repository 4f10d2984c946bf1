import { applyView } from "../share/view.ts";
import { readDraft } from "../state/draft-storage.ts";
import type { Bench } from "./bench.ts";
import { openBuild, toReading } from "./open-build.ts";

/** Puts the draft of an earlier visit back on the bench. @returns whether there was one */
export async function restoreDraft(bench: Bench): Promise<boolean> {
  const draft = readDraft();
  if (!draft || !(await openBuild(bench, draft.source, draft.settings))) return false;
  applyView(bench.store, draft);
  const other = draft.other === undefined ? undefined : await toReading(bench, draft.other);
  bench.store.set({ story: draft.story, other });
  return true;
}
