import type { Editor } from "../state/editor.ts";

const TEXT_TYPES = ["text", "number", "search", "url"];

/** While text is being typed, undo belongs to the text. */
function isTyping(target: EventTarget | null): boolean {
  if (target instanceof HTMLTextAreaElement) return true;
  return target instanceof HTMLInputElement && TEXT_TYPES.includes(target.type);
}

/** Ctrl+Z and Ctrl+Shift+Z (or Ctrl+Y) for the build. */
export function listenForUndo(editor: Editor): void {
  document.addEventListener("keydown", (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return;
    const key = event.key.toLowerCase();
    if (key !== "z" && key !== "y") return;
    event.preventDefault();
    if (key === "y" || event.shiftKey) void editor.redo();
    else void editor.undo();
  });
}
