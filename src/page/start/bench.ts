import type { Engine } from "../engine/engine.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";

/** Where guards are put: what is shown, what changes it, and what reads it. */
export interface Bench {
  readonly store: AppStore;
  readonly editor: Editor;
  readonly engine: Engine;
}
