import type { AppStore } from "../state/app-state.ts";
import { readDraft } from "../state/draft-storage.ts";
import type { Editor } from "../state/editor.ts";
import { openBuild, toReading } from "./open-build.ts";

/** Puts the draft of an earlier visit back on the bench. @returns whether there was one */
export function restoreDraft(store: AppStore, editor: Editor): boolean {
  const draft = readDraft();
  if (!draft || !openBuild(store, editor, draft.source, draft.settings)) return false;
  const other = draft.other === undefined ? undefined : toReading(draft.other);
  store.set({ story: draft.story, other });
  return true;
}
