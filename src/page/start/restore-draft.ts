import { applyView } from "../share/view.ts";
import { readDraft } from "../state/draft-storage.ts";
import { keepAs } from "../state/kept-as.ts";
import type { Bench } from "./bench.ts";
import { openBuild, toReading } from "./open-build.ts";

/** Puts the draft of an earlier visit back on the bench. @returns whether there was one */
export async function restoreDraft(bench: Bench): Promise<boolean> {
  const draft = readDraft();
  if (!draft) return false;
  const guard = {};
  if (typeof draft.kept === "string") keepAs(guard, draft.kept);
  if (!(await openBuild(bench, draft.source, draft.settings, guard))) return false;
  applyView(bench.store, draft);
  const other = draft.other === undefined ? undefined : await toReading(bench, draft.other);
  bench.store.set({ story: draft.story, other });
  return true;
}
