import { freshId, h } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";

/** The page's own heading: out of sight beside the field that says the same, and on paper above everything. */
export function createHeading(store: AppStore): HTMLElement {
  const heading = h("h1", { class: "heading" });
  store.watch(
    (state) => [state.source?.title],
    (title) => {
      heading.textContent = title || "A guard";
    },
  );
  return heading;
}

/** What the guard is called. */
export function createTitleField(store: AppStore, editor: Editor): HTMLElement {
  const id = freshId("title");
  const input = h("input", { id, type: "text", maxlength: 200, autocomplete: "off" });
  input.addEventListener("change", () => editor.edit((source) => ({ ...source, title: input.value.trim() })));
  store.watch(
    (state) => [state.source?.title],
    (title) => {
      input.value = title ?? "";
      document.title = title ? `${title} – Presolder` : "Presolder";
    },
  );
  return h("div", { class: "field title-field" }, h("label", { for: id }, "This guard"), input);
}
