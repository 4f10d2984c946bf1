import { freshId, h } from "../../dom/element.ts";

/** What one looks for on the shelf. @param changed called with every letter */
export function createSearchField(changed: () => void): { readonly element: HTMLElement; read(): string } {
  const id = freshId("shelf-search");
  const input = h("input", {
    id,
    type: "search",
    autocomplete: "off",
    spellcheck: "false",
    placeholder: "name, guitar, state, part, note",
  });
  input.addEventListener("input", changed);
  return {
    element: h("div", { class: "field shelf-search" }, h("label", { for: id }, "Find a guard"), input),
    read: () => input.value,
  };
}
