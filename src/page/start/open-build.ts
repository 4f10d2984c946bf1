import { PresolderError } from "../../errors.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import type { BuildSource } from "../state/reading.ts";

function isLongForm(input: unknown): input is BuildSource {
  if (typeof input !== "object" || input === null) return false;
  const { presolder, parts, wires } = input as Record<string, unknown>;
  return presolder === 1 && typeof parts === "object" && parts !== null && Array.isArray(wires);
}

/** Puts a build file on the bench, whatever form it has; a file that is none is refused in the status line. */
export function openBuild(store: AppStore, editor: Editor, input: unknown): void {
  try {
    if (!isLongForm(input)) throw new PresolderError("BUILD_INVALID", "This is not a build file.");
    editor.open(input);
    store.set({ notice: "" });
  } catch (error) {
    if (!(error instanceof PresolderError)) throw error;
    store.set({ notice: error.message });
  }
}
