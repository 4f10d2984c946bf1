import { freshId, h } from "../dom/element.ts";
import { postJson } from "../server/client.ts";
import type { AppStore } from "../state/app-state.ts";
import { viewOf } from "./view.ts";

async function makeLink({ state }: AppStore): Promise<string> {
  if (state.faults.length > 0) throw new Error("The guard has faults that must be mended before it can be sent.");
  const { url } = await postJson("/api/link", { build: state.source, view: { ...viewOf(state) } });
  return url;
}

async function copy(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    // Not allowed without https, or by the person; the address stands in the field, selected.
    return false;
  }
}

/** A link that carries the guard and the present view in itself. */
export function createSharePanel(store: AppStore): HTMLElement {
  const id = freshId("link");
  const field = h("input", { id, type: "text", readonly: true, class: "link-field" });
  const told = h("p", { class: "hint", role: "status" });
  const holder = h("div", { class: "field", hidden: true }, h("label", { for: id }, "The link"), field, told);
  const button = h("button", { type: "button", class: "primary" }, "Copy a link to this guard");
  button.addEventListener("click", async () => {
    button.disabled = true;
    try {
      field.value = await makeLink(store);
      holder.hidden = false;
      field.select();
      const copied = await copy(field.value);
      told.textContent = copied ? "Copied." : "Copy it from here.";
      store.set({ notice: "" });
    } catch (error) {
      store.set({ notice: (error as Error).message });
    } finally {
      button.disabled = false;
    }
  });
  return h(
    "div",
    { class: "stack" },
    h(
      "p",
      { class: "hint" },
      "The link holds the whole guard, the guard kept as B and what is set now. Nothing is stored anywhere else; whoever has the link has the guard.",
    ),
    h("div", { class: "buttons" }, button),
    holder,
  );
}
