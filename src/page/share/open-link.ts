import { getJson } from "../server/client.ts";
import { openBuild, toReading } from "../start/open-build.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { applyView, type View } from "./view.ts";

const LINK_PATH = /^\/b\/([^/]+)$/;

/** The code in the page's own address. */
export function codeInAddress(): string | undefined {
  return LINK_PATH.exec(location.pathname)?.[1];
}

/** Puts what a link carries on the bench. @returns whether there was something to put */
export async function openLink(store: AppStore, editor: Editor, code: string): Promise<boolean> {
  try {
    const { build, view: written = {} } = await getJson(`/api/link/${code}`);
    const view = written as View;
    if (!openBuild(store, editor, build, view.settings ?? {})) return false;
    applyView(store, view);
    if (view.other !== undefined) store.set({ other: toReading(view.other) });
    return true;
  } catch (error) {
    store.set({ notice: `This link cannot be opened: ${(error as Error).message}` });
    return false;
  }
}
